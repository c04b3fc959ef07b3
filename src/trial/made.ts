import { setback } from '../forming/index.js';
import { type Stroke, travelOf } from './stroke.js';
import type { Tooling } from './tooling.js';

/** What one stroke makes of its bend, as a step records it. mm, N/mm, degrees. */
export interface Made {
  readonly springback: number;
  readonly insideRadius: number;
  readonly allowance: number;
  readonly deduction: number;
  readonly depth: number;
  readonly peakForcePerLength: number;
}

/** Of a V bend what the forming calculation says; of a hem that is closed its rule, no springback counted. */
export const madeBy = (tooling: Tooling, bend: number, stroke: Stroke): Made => {
  const { air, hem, closedRadius, closeForce } = tooling.forming[bend]!;
  if (stroke.kind === 'V' || !hem) return air;
  const { thickness } = stroke;
  const allowance = hem.closedLength;
  return {
    springback: 0, insideRadius: closedRadius!, allowance, depth: travelOf(stroke), peakForcePerLength: closeForce!,
    deduction: 2 * setback(closedRadius!, thickness, stroke.bendAngle) - allowance,
  };
};

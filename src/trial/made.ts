import { setback } from '../forming/index.js';
import { type Stroke, startOf, travelOf } from './stroke.js';
import type { Tooling } from './tooling.js';
import { depthAt, insideRadiusAt } from './vBend.js';

/** What one stroke makes of its bend, as a step records it. mm, N/mm, degrees. */
export interface Made {
  readonly springback: number;
  readonly insideRadius: number;
  readonly allowance: number;
  readonly deduction: number;
  readonly depth: number;
  readonly peakForcePerLength: number;
}

/** Of a V bend what the forming calculation says (of the second pass, of the whole bend); of a hem that is closed and of an offset bend its rule, no springback counted. */
export const madeBy = (tooling: Tooling, bend: number, stroke: Stroke): Made => {
  const { air, hem, closedRadius, closeForce, passes, bend: whole, offset } = tooling.forming[bend]!;
  if (stroke.kind === 'offset') {
    const { insideRadius, allowance, deduction } = air;
    return { springback: 0, insideRadius, allowance, deduction, depth: travelOf(stroke), peakForcePerLength: offset!.forcePerLength };
  }
  if (!whole) return air;
  if (passes && stroke === passes.first) {
    // the arc keeps its whole flat length from the first pass on: wide at first, it tightens (docs/kinematics.md, 'A bend part-way')
    const insideRadius = insideRadiusAt(whole, stroke.bendAngle);
    const { springback, depth, peakForcePerLength } = passes.air;
    return { springback, depth, peakForcePerLength, insideRadius, allowance: whole.allowance, deduction: 2 * setback(insideRadius, whole.thickness, stroke.bendAngle) - whole.allowance };
  }
  // counted from where the tip meets the bend that the first pass has left
  if (passes && stroke === passes.second) return { ...air, depth: air.depth - depthAt(whole, startOf(stroke)) };
  if (stroke.kind === 'V' || !hem) return air;
  const { thickness } = stroke;
  const allowance = hem.closedLength;
  return {
    springback: 0, insideRadius: closedRadius!, allowance, depth: travelOf(stroke), peakForcePerLength: closeForce!,
    deduction: 2 * setback(closedRadius!, thickness, stroke.bendAngle) - allowance,
  };
};

import type { Mark } from '../metal/index.js';
import { allowanceByRule } from './allowance.js';
import type { AirBend, AirBendSetup } from './airBendTypes.js';
import { oehlerForce, textbookForce } from './force.js';
import { planeStrainArc } from './planeStrainArc.js';

/** A figure that a published rule gives for the same bend, beside the strip's. */
export interface ClosedForm {
  readonly what: 'peak force per length' | 'allowance' | 'springback';
  readonly value: number;
  readonly unit: 'N/mm' | 'mm' | 'degrees';
  readonly source: string;
  readonly mark: Mark;
}

/**
 * What the rules say for a bend that the strip has answered: forces with the V of their own convention, allowances for
 * the strip's radius, the arc's springback alone (the legs give back more).
 */
export const closedForms = (setup: AirBendSetup, bend: AirBend): readonly ClosedForm[] => {
  const { metal, thickness } = setup;
  const rm = metal.tensile.typical;
  const { insideRadius, bendAngleReleased } = bend;
  const allowance = (rule: Parameters<typeof allowanceByRule>[0]): number =>
    allowanceByRule(rule, insideRadius, thickness, bendAngleReleased);
  return [
    { what: 'peak force per length', value: textbookForce(rm, thickness, bend.vSharp), unit: 'N/mm', source: '1.33 Rm t2/V, V between sharp corners (textbooks)', mark: 'textbook' },
    { what: 'peak force per length', value: oehlerForce(rm, thickness, bend.vTangent), unit: 'N/mm', source: '(1 + 4t/V) Rm t2/V, V between tangent points (Oehler, as quoted from Lange 1990)', mark: 'textbook' },
    { what: 'allowance', value: allowance({ name: 'DIN 6935' }), unit: 'mm', source: 'DIN 6935, for the radius that forms', mark: 'standard' },
    { what: 'allowance', value: allowance({ name: 'aviation handbook' }), unit: 'mm', source: '(0.01743 R + 0.0078 T) N, aviation handbooks', mark: 'textbook' },
    { what: 'springback', value: planeStrainArc(metal, insideRadius, thickness, bendAngleReleased).springback, unit: 'degrees', source: 'the arc alone, plane strain; the legs give back more', mark: 'textbook' },
  ];
};

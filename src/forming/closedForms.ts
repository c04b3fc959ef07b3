import type { Family, Mark } from '../metal/index.js';
import { type AllowanceRule, allowanceByRule, allowanceFrom, deductionFrom, dinDeduction, squareDeduction } from './allowance.js';
import type { AirBend, AirBendSetup } from './airBendTypes.js';
import { oehlerForce, textbookForce } from './force.js';
import { planeStrainArc } from './planeStrainArc.js';
import { closedFormDepth } from './vee.js';

/** A figure that a published rule gives for the same bend, beside the strip's. */
export interface ClosedForm {
  readonly what: 'peak force per length' | 'inside radius' | 'allowance' | 'deduction' | 'springback' | 'depth';
  readonly value: number;
  /** The strip's own. */
  readonly strip: number;
  readonly unit: 'N/mm' | 'mm' | 'degrees';
  readonly source: string;
  readonly mark: Mark;
}

/** The trade's natural radius over V, the middle of what is told; other families have no figure. Common practice, no source. */
const NATURAL: Partial<Readonly<Record<Family, number>>> = {
  'mild steel': 0.16, 'galvanised steel': 0.16, 'stainless steel': 0.21, aluminium: 0.135,
};

/**
 * What the rules say for a bend that the strip has answered: forces with the V of their own convention, flat lengths for
 * the strip's radius, the arc's springback alone (the legs give back more), the depth of straight legs and one arc.
 */
export const closedForms = (setup: AirBendSetup, bend: AirBend): readonly ClosedForm[] => {
  const { metal, thickness } = setup;
  const rm = metal.tensile.typical;
  const { insideRadius, bendAngleReleased } = bend;
  const allowance = (rule: AllowanceRule): number => allowanceByRule(rule, insideRadius, thickness, bendAngleReleased);
  const deduction = (rule: AllowanceRule): number => deductionFrom(allowance(rule), insideRadius, thickness, bendAngleReleased);
  const din = dinDeduction(insideRadius, thickness, bendAngleReleased);
  const rows: readonly (readonly [ClosedForm['what'], number, Mark, string])[] = [
    ['peak force per length', textbookForce(rm, thickness, bend.vSharp), 'textbook', '1.33 Rm t2/V, V between sharp corners (textbooks)'],
    ['peak force per length', oehlerForce(rm, thickness, bend.vTangent), 'textbook', '(1 + 4t/V) Rm t2/V, V between tangent points (Oehler, as quoted from Lange 1990)'],
    ...radiusRow(metal.family, bend.vSharp),
    ['allowance', allowanceFrom(din, insideRadius, thickness, bendAngleReleased), 'standard', 'DIN 6935, for the radius that forms'],
    ['allowance', allowance({ name: 'aviation handbook' }), 'textbook', '(0.01743 R + 0.0078 T) N, aviation handbooks'],
    ['deduction', din, 'standard', 'DIN 6935, for the radius that forms'],
    ['deduction', deduction({ name: 'aviation handbook' }), 'textbook', 'aviation handbooks, for the radius that forms'],
    ...squareRows(insideRadius, thickness, bendAngleReleased),
    ['springback', planeStrainArc(metal, insideRadius, thickness, bendAngleReleased).springback, 'textbook', 'the arc alone, plane strain; the legs give back more'],
    ['depth', closedFormDepth(setup, thickness, insideRadius, bend.bendAngleUnderLoad), 'textbook', 'straight legs and one arc of the radius that forms, at the angle under load'],
  ];
  const strip: Readonly<Record<ClosedForm['what'], readonly [number, ClosedForm['unit']]>> = {
    'peak force per length': [bend.peakForcePerLength, 'N/mm'], 'inside radius': [insideRadius, 'mm'], allowance: [bend.allowance, 'mm'],
    deduction: [bend.deduction, 'mm'], springback: [bend.springback, 'degrees'], depth: [bend.depth, 'mm'],
  };
  return rows.map(([what, value, mark, source]) => ({ what, value, strip: strip[what][0], unit: strip[what][1], source, mark }));
};

const radiusRow = (family: Family, v: number): [ClosedForm['what'], number, Mark, string][] => {
  const share = NATURAL[family];
  return share === undefined ? [] : [['inside radius', share * v, 'common practice', `${share} V, V between sharp corners; common practice, no source`]];
};

/** Degrees: a bend solved for 90 comes out within this of it. */
const SQUARE = 1e-3;

/** The books' rules in radius and thickness alone hold for square bends. */
const squareRows = (insideRadius: number, thickness: number, bendAngle: number): [ClosedForm['what'], number, Mark, string][] =>
  Math.abs(bendAngle - 90) > SQUARE ? [] : [
    ['deduction', squareDeduction['table book'](insideRadius, thickness), 'textbook', '0.43 r + 1.48 s, square bends only (a metal-trades table book)'],
    ['deduction', squareDeduction['school book'](insideRadius, thickness), 'textbook', '0.5 r + 1.5 t, square bends only (a school book)'],
  ];

import { DEGREE } from './degrees.js';

/** Named rules for the flat length of a bend. K is the neutral line's distance from the inside face over t. */
export type AllowanceRule =
  | { readonly name: 'K-factor'; readonly k: number }
  | { readonly name: 'DIN 6935' }
  /** (0.01743 R + 0.0078 T) per degree. */
  | { readonly name: 'aviation handbook' }
  /** (0.0173 R + 0.0078 T) per degree: the same rounded otherwise, a naval training text. */
  | { readonly name: 'naval handbook' }
  /** Lengths per 90 degrees a T + 1.57 R: a 0.55 soft copper and brass, 0.64 half hard, soft steel, aluminium, 0.71 hard. */
  | { readonly name: 'machinist handbook'; readonly group: 'soft' | 'medium' | 'hard' }
  /** K 0.33 for R < 2T, else 0.5. */
  | { readonly name: 'textbook K' };

const MACHINIST = { soft: 0.55, medium: 0.64, hard: 0.71 } as const;

/** DIN 6935's k (twice the K of the K-factor convention): 0.65 + 0.5 lg(r/s), 1 over r/s = 5. */
export const dinK = (insideRadius: number, thickness: number): number =>
  insideRadius / thickness > 5 ? 1 : 0.65 + 0.5 * Math.log10(insideRadius / thickness);

/** Flat length of the bend's arc, mm. Radius and thickness in mm, bend angle in degrees (0 flat). */
export const allowanceByRule = (
  rule: AllowanceRule,
  insideRadius: number,
  thickness: number,
  bendAngle: number,
): number => {
  const angle = bendAngle * DEGREE;
  switch (rule.name) {
    case 'K-factor':
      return angle * (insideRadius + rule.k * thickness);
    case 'DIN 6935':
      return angle * (insideRadius + (thickness * dinK(insideRadius, thickness)) / 2);
    case 'aviation handbook':
      return (0.01743 * insideRadius + 0.0078 * thickness) * bendAngle;
    case 'naval handbook':
      return (0.0173 * insideRadius + 0.0078 * thickness) * bendAngle;
    case 'machinist handbook':
      return (MACHINIST[rule.group] * thickness + 1.57 * insideRadius) * (bendAngle / 90);
    case 'textbook K':
      return angle * (insideRadius + (insideRadius < 2 * thickness ? 0.33 : 0.5) * thickness);
  }
};

/** What the outside lengths of a bend are measured to. */
export type OutsideConvention = 'mould lines' | 'outer tangents';

/** Degrees: a bend solved for 90 comes out within this of it, and must not change its convention for that. */
const SQUARE = 1e-6;

/** Up to 90 degrees of bend angle to the mould lines, above to the outer tangents, as drawings do and DIN 6935. */
export const outsideConvention = (bendAngle: number): OutsideConvention =>
  bendAngle <= 90 + SQUARE ? 'mould lines' : 'outer tangents';

/** Distance from the bend's tangent line to the mould line, mm, at any bend angle under 180: K (R + T) with the handbooks' K = tan(A/2). */
export const mouldLineSetback = (insideRadius: number, thickness: number, bendAngle: number): number =>
  (insideRadius + thickness) * Math.tan((bendAngle / 2) * DEGREE);

/** Distance from the bend's tangent line to where its outside length is measured to, mm. */
export const setback = (insideRadius: number, thickness: number, bendAngle: number): number =>
  bendAngle <= 90 ? mouldLineSetback(insideRadius, thickness, bendAngle) : insideRadius + thickness;

/** Deduction: the two outside lengths less the flat length, mm, in `outsideConvention(bendAngle)`. */
export const deductionFrom = (allowance: number, insideRadius: number, thickness: number, bendAngle: number): number =>
  2 * setback(insideRadius, thickness, bendAngle) - allowance;

/** The other way round. */
export const allowanceFrom = (deduction: number, insideRadius: number, thickness: number, bendAngle: number): number =>
  2 * setback(insideRadius, thickness, bendAngle) - deduction;

/** The K-factor that gives this allowance: neutral line from the inside face over thickness. */
export const kFactorOf = (allowance: number, insideRadius: number, thickness: number, bendAngle: number): number =>
  (allowance / (bendAngle * DEGREE) - insideRadius) / thickness;

/** Under this bend angle (over 165 degrees included) DIN 6935 takes nothing off. */
const DIN_FLAT = 15;

/**
 * DIN 6935's own deduction v, mm, with its last range: about 0 under a bend angle of 15 degrees, where it steps down. A
 * development by the rule goes on with the formula instead (`allowanceByRule`): a radius made in many small hits would
 * come out too long by every one of them.
 */
export const dinDeduction = (insideRadius: number, thickness: number, bendAngle: number): number =>
  bendAngle < DIN_FLAT ? 0 : deductionFrom(allowanceByRule({ name: 'DIN 6935' }, insideRadius, thickness, bendAngle), insideRadius, thickness, bendAngle);

/** Deductions of school and table books in radius and thickness alone: for square bends only, mm. */
export const squareDeduction: Readonly<Record<'table book' | 'school book', (insideRadius: number, thickness: number) => number>> = {
  'table book': (r, s) => 0.43 * r + 1.48 * s,
  'school book': (r, t) => 0.5 * r + 1.5 * t,
};

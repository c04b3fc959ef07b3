import { DEGREE } from './degrees.js';
import { halfOpening, type Vee } from './vee.js';

export interface MinimumFlange {
  /** mm, outside: the greater of the two, with the margin. */
  readonly flange: number;
  /** The flat edge must reach the point where the shoulder's arc begins (DERIVED, CHECKS 4). */
  readonly atStart: number;
  /** The wing must reach past the contact at the end of the stroke (DERIVED, CHECKS 4). */
  readonly atEnd: number;
  readonly margin: number;
}

/**
 * Overlap kept beyond the bare geometry, over the V between tangent points: with it the trade's 0.7 V comes out for
 * V = 8 t. Common practice, no source.
 */
const FLANGE_MARGIN = 0.07;

/**
 * Smallest outside flange for a V. `deduction` to the mould lines; `overTangent` what a length to the mould line is
 * longer than the length as it is measured, mm (0 up to 90 degrees of bend angle).
 */
export const minimumFlange = (
  vee: Vee,
  bend: { readonly bendAngleUnderLoad: number; readonly deduction: number; readonly overTangent: number },
): MinimumFlange => {
  const half = halfOpening(vee);
  const b = (bend.bendAngleUnderLoad / 2) * DEGREE;
  const atStart = half + bend.deduction / 2 - bend.overTangent;
  const atEnd = half / Math.cos(b) - vee.shoulderRadius * Math.tan(b) - bend.overTangent;
  const margin = FLANGE_MARGIN * 2 * half;
  return { flange: Math.max(atStart, atEnd) + margin, atStart, atEnd, margin };
};

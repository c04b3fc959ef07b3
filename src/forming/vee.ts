import { DEGREE } from './degrees.js';

/**
 * How a V opening is measured: 'sharp' between the corners that the V's walls would make with the top face;
 * 'tangent' between the points where the shoulder arcs meet the top face.
 */
export type VConvention = 'sharp' | 'tangent';

/** The parts of a V die that touch the sheet. Lengths in mm, the included angle in degrees. */
export interface Vee {
  readonly v: number;
  readonly vConvention: VConvention;
  /** Included angle of the V. */
  readonly dieAngle: number;
  readonly shoulderRadius: number;
}

/**
 * Half the distance between the centres of the shoulder arcs, mm (docs/kinematics.md): V/2 for the tangent
 * convention, V/2 + rd tan(45 deg - dieAngle/4) for the sharp one.
 */
export const halfOpening = (vee: Vee): number =>
  vee.vConvention === 'tangent'
    ? vee.v / 2
    : vee.v / 2 + vee.shoulderRadius * Math.tan((45 - vee.dieAngle / 4) * DEGREE);

/** The V between tangent points and between sharp corners of the same die, mm. */
export const bothOpenings = (vee: Vee): { readonly sharp: number; readonly tangent: number } => {
  const tangent = 2 * halfOpening(vee);
  return { tangent, sharp: tangent - 2 * vee.shoulderRadius * Math.tan((45 - vee.dieAngle / 4) * DEGREE) };
};

/**
 * Depth of the inner apex from first touch at a bend angle (degrees), mm, for a sheet of straight legs and one arc:
 * s = c tan b - (Ri + t + rd)(1/cos b - 1), b half the bend angle. Exact geometry; the metal's own curvature is not in it.
 */
export const closedFormDepth = (
  vee: Vee,
  thickness: number,
  insideRadius: number,
  bendAngle: number,
): number => {
  const b = (bendAngle / 2) * DEGREE;
  return halfOpening(vee) * Math.tan(b) - (insideRadius + thickness + vee.shoulderRadius) * (1 / Math.cos(b) - 1);
};

/**
 * Straight length between the arc's end and the shoulder contact, mm. Negative: the shoulder touches the arc itself
 * and the closed form does not hold.
 */
export const legReserve = (vee: Vee, thickness: number, insideRadius: number, bendAngle: number): number => {
  const b = (bendAngle / 2) * DEGREE;
  return halfOpening(vee) / Math.cos(b) - (insideRadius + thickness + vee.shoulderRadius) * Math.tan(b);
};

/**
 * The radius that makes `closedFormDepth` give this depth at this angle, mm: the radius of the arc that touches
 * both wings' inner faces and the true inner apex.
 */
export const radiusFromDepth = (vee: Vee, thickness: number, depth: number, bendAngle: number): number => {
  const b = (bendAngle / 2) * DEGREE;
  return (halfOpening(vee) * Math.tan(b) - depth) / (1 / Math.cos(b) - 1) - thickness - vee.shoulderRadius;
};

/** How many degrees of bend angle a mm of depth is worth at this angle, the radius held. */
export const depthSensitivity = (vee: Vee, thickness: number, insideRadius: number, bendAngle: number): number => {
  const b = (bendAngle / 2) * DEGREE;
  const slope = (halfOpening(vee) - (insideRadius + thickness + vee.shoulderRadius) * Math.sin(b)) / Math.cos(b) ** 2;
  return 2 / slope / DEGREE;
};

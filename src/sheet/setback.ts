const RADIANS = Math.PI / 180;

/**
 * mm from a bend's tangent line to the point that its flange's outside length is measured to: the apex of the outer
 * mould lines up to a bend angle of 90 degrees; beyond, the tangent across the outside of the bend (as in DIN 6935),
 * so that a hem of radius r adds r + thickness.
 */
export const setback = (insideRadius: number, thickness: number, bendAngle: number): number =>
  (insideRadius + thickness) * (bendAngle <= 90 ? Math.tan((bendAngle / 2) * RADIANS) : 1);

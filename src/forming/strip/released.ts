import type { Equilibrium } from './equilibrium.js';
import { integrateHalf, type StripCase } from './halfStrip.js';
import type { Stroke } from './stroke.js';

/** The bend after the stroke, thickness one, radians. */
export interface Released {
  /** Half the bend angle. */
  readonly inclination: number;
  /**
   * Radius of the arc that touches both wings' inner faces and the inner apex as it is.
   */
  readonly insideRadius: number;
  /** Both outside lengths to the mould lines less the flat length. */
  readonly deduction: number;
  /** Least inside radius of the metal itself anywhere along the strip, under load. */
  readonly leastRadius: number;
}

/**
 * Lets a state go: each section gives back the elastic part of its curvature, and the wings' faces, prolonged, are
 * held against the flat length.
 */
export const releasedShape = (strip: StripCase, stroke: Stroke, state: Equilibrium): Released => {
  let x = 0;
  let y = 0;
  let before = 0;
  let given = 0;
  let recoveredBefore = 0;
  let thicknessBefore = 1;
  let middle = 1;
  let leastRadius = Infinity;
  integrateHalf(
    strip,
    stroke.solver.frictionAt(state.inclination),
    stroke.solver.nodes,
    state.inclination,
    state.unknowns,
    (s, slope, curvature, recovered, thickness) => {
      // a wing still straight, or bent back by what friction pushes, has no hollow for the nose to crease
      if (curvature > 0) leastRadius = Math.min(leastRadius, 1 / curvature / thickness - thickness / 2);
      if (s === 0) middle = thickness;
      else {
        const ds = s - before;
        const half = ((recoveredBefore + recovered) / 2) * ds;
        const lean = slope - given - half / 2;
        const stretched = ((1 / thickness + 1 / thicknessBefore) / 2) * ds;
        x += stretched * Math.cos(lean);
        y += stretched * Math.sin(lean);
        given += half;
      }
      before = s;
      recoveredBefore = recovered;
      thicknessBefore = thickness;
    },
  );
  const inclination = state.inclination - state.release;
  const [cos, sin] = [Math.cos(inclination), Math.sin(inclination)];
  // the faces of the straight wing, half a thickness to both sides of its mean line, cut the middle plane at
  const meanCut = y - x * Math.tan(inclination);
  const innerVertex = meanCut + 0.5 / cos;
  const outerVertex = meanCut - 0.5 / cos;
  const apex = middle / 2 - state.dent / 2;
  const alongOuter = x * cos + (y - outerVertex) * sin;
  return {
    inclination,
    insideRadius: (apex - innerVertex) / (1 / cos - 1),
    deduction: 2 * (alongOuter - state.half.end.s),
    // a sharp nose leaves a crease: the section's own law does not reach to it
    leastRadius: Math.max(0, leastRadius),
  };
};

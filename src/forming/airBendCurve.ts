import { stripOf } from './airBend.js';
import type { AirBendReason, AirBendSetup } from './airBendTypes.js';
import { checkSetup } from './checkSetup.js';
import { DEGREE } from './degrees.js';

/** One moment of a stroke: mm, N/mm, degrees. */
export interface CurvePoint {
  readonly depth: number;
  readonly forcePerLength: number;
  readonly bendAngleUnderLoad: number;
  /** What the bend angle would be if the stroke ended here. */
  readonly bendAngleReleased: number;
  /** From where the sheet is bent as round as the nose on, it bears at two places beside the middle. */
  readonly noseBears: 'in the middle' | 'at two places';
  /** The share by which the strip's own force is less: where the nose comes to bear at two places it is held until it rises further. */
  readonly held: number;
}

export interface AirBendCurve {
  /** From first touch on, `step` degrees of bend angle apart. */
  readonly points: readonly CurvePoint[];
  /** Where air bending ends: on the die's walls, or where no leg is left. */
  readonly end: 'asked' | 'bottoming' | 'no leg';
}

/** Degrees of bend angle between two points when nothing else is said. */
const USUAL_STEP = 2;

/**
 * Force and angle against depth, to be drawn: up to a bend angle under load, or as far as the die bends in air.
 */
export const airBendCurve = (
  setup: AirBendSetup,
  { upTo = 180 - setup.dieAngle, step = USUAL_STEP }: { readonly upTo?: number; readonly step?: number } = {},
): { readonly ok: true; readonly value: AirBendCurve } | { readonly ok: false; readonly reason: AirBendReason } => {
  const bad = checkSetup(setup);
  if (bad !== null) return { ok: false, reason: bad };
  const { stroke } = stripOf(setup, (step / 2) * DEGREE);
  const bottom = 180 - setup.dieAngle;
  const last = Math.min(upTo, bottom);
  const reached = stroke.at((last / 2) * DEGREE) !== null;
  const force = setup.metal.modulus * setup.thickness;
  const asked = stroke.states.length;
  // to where it is greatest, be it past what is asked, the force never falls: `heldForce` of the stroke says why
  if (reached && last < bottom) stroke.at((bottom / 2) * DEGREE);
  const top = stroke.states.reduce((best, e, i) => (e.force > stroke.states[best]!.force ? i : best), 0);
  let most = 0;
  const points = stroke.states.slice(0, asked).map((e, i) => ({
    depth: e.depth * setup.thickness,
    forcePerLength: (i <= top ? (most = Math.max(most, e.force)) : e.force) * force,
    held: i <= top ? 1 - e.force / most : 0,
    bendAngleUnderLoad: (2 * e.inclination) / DEGREE,
    bendAngleReleased: (2 * (e.inclination - e.release)) / DEGREE,
    noseBears: e.unknowns.bearing2 > 0 ? ('at two places' as const) : ('in the middle' as const),
  }));
  return {
    ok: true,
    value: {
      points: [{ depth: 0, forcePerLength: 0, bendAngleUnderLoad: 0, bendAngleReleased: 0, noseBears: 'in the middle', held: 0 }, ...points],
      end: !reached ? 'no leg' : upTo < bottom ? 'asked' : 'bottoming',
    },
  };
};

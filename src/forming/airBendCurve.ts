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
  const points = stroke.states.map((e) => ({
    depth: e.depth * setup.thickness,
    forcePerLength: e.force * force,
    bendAngleUnderLoad: (2 * e.inclination) / DEGREE,
    bendAngleReleased: (2 * (e.inclination - e.release)) / DEGREE,
    noseBears: e.unknowns.bearing2 > 0 ? ('at two places' as const) : ('in the middle' as const),
  }));
  return {
    ok: true,
    value: {
      points: [{ depth: 0, forcePerLength: 0, bendAngleUnderLoad: 0, bendAngleReleased: 0, noseBears: 'in the middle' }, ...points],
      end: !reached ? 'no leg' : upTo < bottom ? 'asked' : 'bottoming',
    },
  };
};

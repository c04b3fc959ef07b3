import { type Grain, type Metal, type MinimumRadius, minimumRadius } from '../metal/index.js';
import { textbookForce } from './force.js';

/**
 * A hem's flattening force is about this many times the air-bend force of the same sheet over a V of 8 t. Common
 * practice, no source; an open (drop-shaped) hem needs less, a fully closed one more.
 */
const HEM_FACTOR = { open: 3, closed: 4 } as const;

/** V over thickness of the air bend that the hem's factor is told against. */
const HEM_REFERENCE_V = 8;

/** Force per length to close a hem, N/mm. Common practice, no source. */
export const hemCloseForce = (tensile: number, thickness: number, hem: 'open' | 'closed'): number =>
  HEM_FACTOR[hem] * textbookForce(tensile, thickness, HEM_REFERENCE_V * thickness);

/** Over the thickness: a metal whose least radius across the grain is no larger is folded flat on itself. Common practice, no source. */
const FOLDS_FLAT = 0.5;
const HEM_ANGLE = 180;

/**
 * Least inside radius that a hem may be closed to, mm: the metal's own, but none of a metal soft enough to be folded flat, whatever its
 * table says of a bend in a V. Null where no figure reaches.
 */
export const hemMinimumRadius = (metal: Metal, thickness: number, grain: Grain): MinimumRadius | null => {
  const least = minimumRadius(metal, thickness, grain, HEM_ANGLE);
  const across = minimumRadius(metal, thickness, 'across', HEM_ANGLE);
  return least !== null && across !== null && across.radius <= FOLDS_FLAT * thickness ? { ...least, radius: 0 } : least;
};

/** Flat length taken by a closed hem's turn over its outside dimensions, by the trade's rule: 0.43 t less. */
const HEM_DEDUCTION_FACTOR = 0.43;

/** Deduction of a closed hem, mm: outside lengths of flange and hem less the flat length. Common practice, no source. */
export const closedHemDeduction = (thickness: number): number => HEM_DEDUCTION_FACTOR * thickness;

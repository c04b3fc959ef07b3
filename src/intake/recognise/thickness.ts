import type { Brep } from '../step/brep.js';
import { SAME_LENGTH } from '../tolerances.js';
import type { PlanePair } from './pairs.js';
import { type Patch, sameLine } from './patches.js';

/**
 * Bounds of the thickness from surface and volume alone. A sheet of thickness t with skins S on each side and side
 * walls W has volume t S and surface 2 S + W, so t = 2 volume / (surface - W). The walls are taken to be at most half of the surface.
 */
export const thicknessBounds = (brep: Brep): readonly [number, number] => {
  const surface = brep.faces.reduce((sum, face) => sum + face.area, 0);
  const least = (2 * Math.abs(brep.volume)) / surface;
  // bosses and hems drawn closed have more volume for their surface: a hem of a fifth of the blank comes to 13 per cent
  return [0.7 * least, 2 * least];
};

interface Vote {
  readonly distance: number;
  readonly area: number;
}

/** A hollow and a full cylinder about one axis, metal between. */
const cylinderVotes = (patches: readonly Patch[]): Vote[] =>
  patches.flatMap((inner) =>
    inner.hollow
      ? patches
          .filter((outer) => !outer.hollow && outer.radius > inner.radius && sameLine(inner, outer))
          .map((outer) => ({ distance: outer.radius - inner.radius, area: Math.min(inner.area, outer.area) }))
      : [],
  );

/**
 * The distance shared by most surface (mm2) back to back, of parallel planes and of coaxial cylinders, and how much
 * surface that is; undefined when nothing lies back to back within the bounds.
 */
export const findThickness = (
  pairs: readonly PlanePair[],
  patches: readonly Patch[],
  [least, most]: readonly [number, number],
): { readonly thickness: number; readonly area: number } | undefined => {
  const votes = [...pairs, ...cylinderVotes(patches)].filter((v) => v.distance >= least && v.distance <= most);
  let best: { thickness: number; area: number } | undefined;
  for (const { distance } of votes) {
    const near = votes.filter((v) => Math.abs(v.distance - distance) <= SAME_LENGTH);
    const area = near.reduce((sum, v) => sum + v.area, 0);
    const heaviest = near.reduce((a, b) => (b.area > a.area ? b : a));
    if (!best || area > best.area) best = { thickness: heaviest.distance, area };
  }
  return best;
};

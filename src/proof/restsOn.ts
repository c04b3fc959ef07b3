import { type Rigid, apply, compose } from '../geometry/index.js';
import type { Developed } from '../sheet/index.js';
import { cornersOf } from './box.js';
import type { Element, Wing } from './element.js';
import { CONTACT_DEPTH } from './tolerances.js';

/** How far from upright the normal of a lying plate may be: rounding of the pose. */
const UPRIGHT = 1e-6;

/**
 * The elements that lie on the working die's top while the part rests at its seat: flat plates at that height, the
 * zones that join them to something, and what stands up from such a zone (its foot is as near as the zone itself).
 */
export const restingElements = (
  sheet: Developed,
  elements: readonly Element[],
  seat: (wing: Wing) => Rigid,
  dieTop: number,
): ReadonlySet<Element> => {
  const poseOf = (e: Element): Rigid => compose(seat(e.wing), e.rel);
  const middle = dieTop + sheet.part.thickness / 2;
  const flat = elements.filter((e) => {
    if (e.kind !== 'plate') return false;
    const { z, o } = poseOf(e);
    return Math.abs(z[2]) > 1 - UPRIGHT && Math.abs(o[2] - middle) < CONTACT_DEPTH;
  });
  const lying = new Set(flat.map((e) => e.index));
  const touching = (e: Element): readonly number[] =>
    e.kind === 'plate' ? [] : sheet.part.bends[e.index]!.sides.map((s) => s.plate);
  const zones = elements.filter((e) => touching(e).some((p) => lying.has(p)));
  const joined = new Set(zones.flatMap(touching));
  const standing = elements.filter((e) => {
    if (e.kind !== 'plate' || lying.has(e.index) || !joined.has(e.index)) return false;
    const lowest = Math.min(...cornersOf(e.box(0, 0)).map((p) => apply(poseOf(e), p)[2]));
    return lowest >= dieTop - CONTACT_DEPTH;
  });
  return new Set([...flat, ...zones, ...standing]);
};

import { type Rigid, apply, compose, dot3, sub3 } from '../geometry/index.js';
import type { Developed } from '../sheet/index.js';
import { cornersOf } from './box.js';
import type { Element, Wing } from './element.js';
import { CONTACT_DEPTH } from './tolerances.js';

/** How far from upright the normal of a lying plate may be: rounding of the pose. */
const UPRIGHT = 1e-6;

const touching = (sheet: Developed, e: Element): readonly number[] =>
  e.kind === 'plate' ? [] : sheet.part.bends[e.index]!.sides.map((s) => s.plate);

/** The plates `seeds`, all plates of the same wing that lie in the plane of one of them, and the zones joined to any of these. */
export const flatWith = (
  sheet: Developed,
  elements: readonly Element[],
  seeds: ReadonlySet<number>,
  pose: (wing: Wing) => Rigid,
): ReadonlySet<Element> => {
  const poseOf = (e: Element): Rigid => compose(pose(e.wing), e.rel);
  const plates = elements.filter((e) => e.kind === 'plate');
  const flat = plates.filter((e) =>
    plates.some((f) => {
      if (!seeds.has(f.index) || f.wing !== e.wing) return false;
      const [p, q] = [poseOf(e), poseOf(f)];
      return dot3(p.z, q.z) > 1 - UPRIGHT && Math.abs(dot3(q.z, sub3(p.o, q.o))) < CONTACT_DEPTH;
    }),
  );
  const lying = new Set(flat.map((e) => e.index));
  return new Set([...flat, ...elements.filter((e) => touching(sheet, e).some((p) => lying.has(p)))]);
};

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
  const zones = elements.filter((e) => touching(sheet, e).some((p) => lying.has(p)));
  const joined = new Set(zones.flatMap((e) => touching(sheet, e)));
  const standing = elements.filter((e) => {
    if (e.kind !== 'plate' || lying.has(e.index) || !joined.has(e.index)) return false;
    const lowest = Math.min(...cornersOf(e.box(0, 0)).map((p) => apply(poseOf(e), p)[2]));
    return lowest >= dieTop - CONTACT_DEPTH;
  });
  return new Set([...flat, ...zones, ...standing]);
};

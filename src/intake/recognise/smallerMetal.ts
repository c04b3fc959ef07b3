import { type Contour, type Vec2, bounds, flatten, reversed, signedArea, vertex } from '../../geometry/index.js';
import { COMPARE_CHORD, CURVE_CHORD, SAME_POINT } from '../tolerances.js';
import { hugs, plainlyApart, plainlyOverlap } from './nearContours.js';
import { intersectRegions, overlapArea, regionArea, subtractRegions, uniteRegions } from './region.js';

/** One skin as contours: outlines counter-clockwise, holes clockwise, all seen from the A side. */
export type Skin = readonly Contour[];

/** The metal that both skins show, and how the skins differed. */
export interface SharedMetal {
  readonly outline: Contour;
  readonly holes: readonly Contour[];
  /** Holes of both skins, wider on one (countersinks, chamfers): the wider outlines, counter-clockwise, and whether they lie on the A side. */
  readonly sunk: readonly { readonly outline: Contour; readonly onA: boolean }[];
  /** Holes of one skin only (pockets, formed features). */
  readonly oneSided: number;
  /** The outlines differed (chamfers, slanted edges). */
  readonly outlineDiffers: boolean;
  /** Arcs were cut into chords because a true outline could not be kept. */
  readonly clipped: boolean;
}

const perimeterBound = (c: Contour): number => {
  const [[x0, y0], [x1, y1]] = bounds([c]);
  return 2 * (x1 - x0 + (y1 - y0));
};

/** Corner by corner the same, wherever each begins: the usual case of two skins, told without clipping. */
const sameCorners = (a: Contour, b: Contour): boolean => {
  const near = (v: Contour[number], w: Contour[number]): boolean =>
    Math.abs(v.x - w.x) < SAME_POINT && Math.abs(v.y - w.y) < SAME_POINT && Math.abs(v.bulge - w.bulge) < SAME_BULGE;
  const shift = a.length === b.length ? b.findIndex((w) => near(a[0]!, w)) : -1;
  return shift >= 0 && a.every((v, i) => near(v, b[(i + shift) % b.length]!));
};

/** The same contour up to the modelling tolerance. */
const same = (a: Contour, b: Contour): boolean => {
  if (sameCorners(a, b)) return true;
  const [p, q] = [bounds([a]).flat(), bounds([b]).flat()];
  return (
    p.every((v, i) => Math.abs(v - q[i]!) < SAME_POINT) &&
    Math.abs(signedArea(a) - signedArea(b)) < SAME_POINT * perimeterBound(a) &&
    (hugs(points(a), points(b)) || Math.abs(regionArea(subtractRegions([points(a)], [points(b)]))) < SAME_POINT * perimeterBound(a))
  );
};

/** Bulges that differ by less are one arc: half a chord times this is under the modelling tolerance up to 10 m. */
const SAME_BULGE = 1e-6;

const points = (c: Contour, chord = COMPARE_CHORD): Vec2[] => flatten(c, chord);
const straight = (loop: readonly Vec2[]): Contour => loop.map(([x, y]) => vertex(x, y));

/** Whether `inner` lies within `outer` but for rounding. */
const within = (inner: Contour, outer: Contour): boolean =>
  hugs(points(inner), points(outer)) || Math.abs(regionArea(subtractRegions([points(inner)], [points(outer)]))) < SAME_POINT * perimeterBound(inner);

const ccw = (c: Contour): Contour => (signedArea(c) < 0 ? reversed(c) : c);
const cw = (c: Contour): Contour => (signedArea(c) > 0 ? reversed(c) : c);

const largest = (contours: readonly Contour[]): Contour => contours.reduce((a, b) => (signedArea(b) > signedArea(a) ? b : a));

/**
 * Holes that both skins show alike, the usual case; no other hole has metal in common with such a pair, since holes of one face do not
 * overlap. What is left of either skin has to be compared hole by hole.
 */
const twinHoles = (a: readonly Contour[], b: readonly Contour[]): { both: Contour[]; left: [Contour[], Contour[]] } => {
  const others = b.map((c) => ({ c, box: bounds([c]).flat() }));
  const [both, left]: [Contour[], Contour[]] = [[], []];
  for (const c of a) {
    const box = bounds([c]).flat();
    const twin = others.findIndex((other) => box.every((v, i) => Math.abs(v - other.box[i]!) < SAME_POINT) && same(c, other.c));
    if (twin < 0) left.push(c);
    else both.push(largest([c, ...others.splice(twin, 1).map((other) => other.c)]));
  }
  return { both, left: [left, others.map((other) => other.c)] };
};

/** Holes of both skins gathered where they overlap; of each gathering the widest outline, or the union where none holds all. */
const mergeHoles = (a: readonly Contour[], b: readonly Contour[]): { holes: Contour[]; sunk: { outline: Contour; onA: boolean }[]; oneSided: number; clipped: boolean } => {
  const twins = twinHoles(a.map(ccw), b.map(ccw));
  const placed = (skin: 0 | 1) => (c: Contour) => ({ c, skin, box: bounds([c]), ring: points(c) });
  const left = [...twins.left[0].map(placed(0)), ...twins.left[1].map(placed(1))];
  const holes: Contour[] = twins.both.map(cw);
  const sunk: { outline: Contour; onA: boolean }[] = [];
  let [oneSided, clipped] = [0, false];
  while (left.length > 0) {
    const group = [left.shift()!];
    for (const member of group) {
      for (let i = left.length - 1; i >= 0; i--) {
        if (touches(member, left[i]!)) group.push(...left.splice(i, 1));
      }
    }
    const widest = largest(group.map((m) => m.c));
    const skins = new Set(group.map((m) => m.skin)).size;
    if (skins === 1) oneSided++;
    else if (group.some((m) => m.c !== widest && !same(m.c, widest))) sunk.push({ outline: widest, onA: group.find((m) => m.c === widest)!.skin === 0 });
    if (group.every((m) => m.c === widest || sameCorners(m.c, widest) || within(m.c, widest))) holes.push(cw(widest));
    else {
      clipped = true;
      const union = group.map((m) => [points(m.c, CURVE_CHORD)]).reduce((u, c) => uniteRegions(u, c));
      holes.push(...union.map((loop) => cw(straight(loop))));
    }
  }
  return { holes, sunk, oneSided, clipped };
};

interface Boxed {
  readonly c: Contour;
  readonly box: ReturnType<typeof bounds>;
  readonly ring: readonly Vec2[];
}

const touches = (a: Boxed, b: Boxed): boolean => {
  const [[[ax0, ay0], [ax1, ay1]], [[bx0, by0], [bx1, by1]]] = [a.box, b.box];
  if (ax0 > bx1 || bx0 > ax1 || ay0 > by1 || by0 > ay1) return false;
  if (sameCorners(a.c, b.c)) return true;
  return plainlyOverlap(a.ring, b.ring) || (!plainlyApart(a.ring, b.ring) && overlapArea([a.ring], [b.ring]) > SAME_POINT * SAME_POINT);
};

/** The metal common to the two skins; where they differ the smaller metal is kept everywhere. */
export const smallerMetal = (a: Skin, b: Skin): SharedMetal => {
  const split = (skin: Skin): { outer: Contour; rest: Contour[] } => {
    const outer = largest(skin);
    return { outer, rest: skin.filter((c) => c !== outer) };
  };
  const [p, q] = [split(a), split(b)];
  const holesOf = (rest: readonly Contour[]): Contour[] => rest.filter((c) => signedArea(c) < 0);
  const merged = mergeHoles(holesOf(p.rest), holesOf(q.rest));
  const outlineDiffers = !same(p.outer, q.outer);
  const smaller = signedArea(p.outer) <= signedArea(q.outer) ? p.outer : q.outer;
  const larger = smaller === p.outer ? q.outer : p.outer;
  if (!outlineDiffers || within(smaller, larger)) return { outline: smaller, ...merged, outlineDiffers };
  const common = intersectRegions([points(p.outer, CURVE_CHORD)], [points(q.outer, CURVE_CHORD)]).map(straight);
  return { outline: largest(common), ...merged, outlineDiffers, clipped: true };
};

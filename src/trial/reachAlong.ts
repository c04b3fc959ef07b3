import { type Convex, type Interval, union } from '../geometry/index.js';

/** From where to where along a bend, and how far flat metal reaches away from it at either end: straight between. mm */
export interface ReachStretch {
  readonly from: number;
  readonly to: number;
  readonly atFrom: number;
  readonly atTo: number;
}

/** A slit of no more than this across the way parts no flat. mm */
const SLIT = 1;
/** Corners nearer to each other along the bend than this are one. mm */
const SAME_PLACE = 1e-6;

/** Of all metal in one piece of a bend, the share that must reach as far as the V asks. Common practice, no source. */
const LEAST_SHARE = 0.5;

/** From where to where a polygon reaches away from the bend at one place along it. */
const across = (polygon: Convex, u: number): Interval | null => {
  let [least, most] = [Infinity, -Infinity];
  polygon.forEach(([x, y], i) => {
    const [p, q] = polygon[(i + 1) % polygon.length]!;
    if ((x < u && p < u) || (x > u && p > u) || x === p) return;
    const b = y + ((q - y) * (u - x)) / (p - x);
    [least, most] = [Math.min(least, b), Math.max(most, b)];
  });
  return least <= most ? [least, most] : null;
};

/** How far flat metal reaches away from a bend, place by place along one piece of it. `flats`: (along, away from the bend's tangent line), mm. */
export const reachAlong = (flats: readonly Convex[], [from, to]: Interval): readonly ReachStretch[] => {
  const beside = flats.filter((flat) => flat.some(([u]) => u > from) && flat.some(([u]) => u < to));
  const places = [from, ...beside.flatMap((flat) => flat.map(([u]) => u)).filter((u) => u > from && u < to).sort((a, b) => a - b), to];
  return places.slice(1).flatMap((end, i): ReachStretch[] => {
    const start = places[i]!;
    if (end - start < SAME_PLACE) return [];
    const there = beside.flatMap((flat) => {
      const span = across(flat, (start + end) / 2);
      return span ? [{ flat, span }] : [];
    }).sort((a, b) => a.span[0] - b.span[0]);
    let last: { readonly flat: Convex; readonly span: Interval } | null = null;
    for (const next of there) if (next.span[0] <= (last?.span[1] ?? 0) + SLIT && next.span[1] > (last?.span[1] ?? 0)) last = next;
    const at = (u: number): number => (last ? across(last.flat, u)?.[1] ?? last.span[1] : 0);
    return [{ from: start, to: end, atFrom: at(start), atTo: at(end) }];
  });
};

/** The stretches along the bend where its metal reaches less than `least`, joined where they meet. */
export const shortStretches = (reach: readonly ReachStretch[], least: number): readonly Interval[] => {
  const short = reach.flatMap(({ from, to, atFrom, atTo }): Interval[] => {
    if (Math.min(atFrom, atTo) >= least) return [];
    if (Math.max(atFrom, atTo) < least) return [[from, to]];
    const meets = from + ((to - from) * (least - atFrom)) / (atTo - atFrom);
    return [atFrom < least ? [from, meets] : [meets, to]];
  });
  return union(short.map(([from, to]) => [from - SAME_PLACE, to + SAME_PLACE]));
};

/**
 * Does the metal beside one piece of a bend reach as far as its V asks (mm)? Corner reliefs, notches and slanting ends may be short of
 * it: no stretch longer than the V's opening `v`, and all together no more than half of the piece. Common practice, no source.
 */
export const reachesFor = (reach: readonly ReachStretch[], least: number, v: number): boolean => {
  const short = shortStretches(reach, least).map(([from, to]) => to - from - 2 * SAME_PLACE);
  const length = reach.reduce((sum, { from, to }) => sum + to - from, 0);
  return short.every((size) => size <= v) && short.reduce((sum, size) => sum + size, 0) <= (1 - LEAST_SHARE) * length;
};

/** Halvings to the reach that is told: under a hundredth of a mm. */
const HALVINGS = 20;

/** The most that a V of opening `v` could ask of this metal, mm. */
export const reachHeld = (reach: readonly ReachStretch[], v: number): number => {
  let [held, not] = [0, Math.max(0, ...reach.flatMap(({ atFrom, atTo }) => [atFrom, atTo]))];
  if (reachesFor(reach, not, v)) return not;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (held + not) / 2;
    if (reachesFor(reach, middle, v)) held = middle;
    else not = middle;
  }
  return held;
};

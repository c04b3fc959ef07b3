import { type Contour, signedArea, vertex } from '../geometry/index.js';

/** What lies left of `at` (or right, `side` -1) of a straight-edged contour. */
const half = (contour: Contour, at: number, side: 1 | -1): Contour =>
  contour.flatMap((p, i) => {
    const q = contour[(i + 1) % contour.length]!;
    const [inP, inQ] = [side * (at - p.x) >= 0, side * (at - q.x) >= 0];
    const crossing = inP === inQ ? [] : [vertex(at, p.y + ((q.y - p.y) * (at - p.x)) / (q.x - p.x))];
    return inP ? [p, ...crossing] : crossing;
  });

/** A bend's zone cut down to u between `low` and `high` (mm), with u counted from `low` anew. */
export const clipZone = (zone: readonly Contour[], low: number, high: number): readonly Contour[] =>
  zone
    .map((contour) => half(half(contour, high, 1), low, -1).map((v) => vertex(v.x - low, v.y)))
    .filter((contour) => contour.length > 2 && signedArea(contour) !== 0);

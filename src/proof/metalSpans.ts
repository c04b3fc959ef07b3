import { type Contour, signedArea } from '../geometry/index.js';

/** u from and to where a bend's zone (u, share of the arc) has metal in the middle of the arc. */
export const metalSpans = (zone: readonly Contour[]): (readonly [number, number])[] => {
  const crossings = zone
    .flatMap((c) => c.map((v, i) => [v, c[(i + 1) % c.length]!] as const))
    .filter(([p, q]) => p.y > 0.5 !== q.y > 0.5)
    .map(([p, q]) => p.x + ((q.x - p.x) * (0.5 - p.y)) / (q.y - p.y))
    .sort((a, b) => a - b);
  return crossings.flatMap((from, k) => (k % 2 === 0 && k + 1 < crossings.length ? [[from, crossings[k + 1]!] as const] : []));
};

/** The same with the holes filled. */
export const filledSpans = (zone: readonly Contour[]): (readonly [number, number])[] => metalSpans(zone.filter((c) => signedArea(c) > 0));

import { type Vec2, cross2, sub2 } from '../geometry/index.js';

/** Counts how many times closed polygons (arcs cut into chords before) run about a point, counter-clockwise positive. */
export const windingIn = (rings: readonly (readonly Vec2[])[]): ((p: Vec2) => number) => {
  const edges = rings.flatMap((ring) => ring.map((a, i) => [a, ring[(i + 1) % ring.length]!] as const));
  let [low, high] = [Infinity, -Infinity];
  for (const [a] of edges) [low, high] = [Math.min(low, a[1]), Math.max(high, a[1])];
  // edges by the level bands they pass, about as many bands as edges: a point asks its own band only
  const bands: (readonly [Vec2, Vec2])[][] = Array.from({ length: Math.max(1, edges.length) }, () => []);
  const bandOf = (y: number): number => Math.min(bands.length - 1, Math.max(0, Math.floor(((y - low) / (high - low || 1)) * bands.length)));
  for (const edge of edges) {
    const [one, other] = [bandOf(edge[0][1]), bandOf(edge[1][1])];
    for (let band = Math.min(one, other); band <= Math.max(one, other); band++) bands[band]!.push(edge);
  }
  return (p) => {
    let count = 0;
    for (const [a, b] of bands[bandOf(p[1])]!) {
      if (a[1] <= p[1] === b[1] <= p[1]) continue;
      const side = cross2(sub2(b, a), sub2(p, a));
      if (b[1] > a[1] && side > 0) count += 1;
      if (b[1] < a[1] && side < 0) count -= 1;
    }
    return count;
  };
};

import { type Vec2, cross2, sub2 } from '../geometry/index.js';

/** How many times closed polygons (arcs cut into chords before) run about a point, counter-clockwise positive. */
export const windingAt = (rings: readonly (readonly Vec2[])[], p: Vec2): number => {
  let count = 0;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
      if (a[1] <= p[1] === b[1] <= p[1]) continue;
      const side = cross2(sub2(b, a), sub2(p, a));
      if (b[1] > a[1] && side > 0) count += 1;
      if (b[1] < a[1] && side < 0) count -= 1;
    }
  }
  return count;
};

import { expect, it } from 'vitest';
import { mulberry32 } from '../../bench/mulberry32.js';
import type { Vec2 } from '../geometry/index.js';
import { windingIn } from './windingIn.js';

/** The naive twin: the sum of the angles under which the edges are seen, in turns. */
const byAngles = (rings: readonly (readonly Vec2[])[], p: Vec2): number =>
  Math.round(
    rings
      .flatMap((ring) =>
        ring.map((a, i) => {
          const b = ring[(i + 1) % ring.length]!;
          const [u, v] = [[a[0] - p[0], a[1] - p[1]], [b[0] - p[0], b[1] - p[1]]] as const;
          return Math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]);
        }),
      )
      .reduce((sum, angle) => sum + angle, 0) /
      (2 * Math.PI),
  );

it('counts as the sum of angles does, on random self-crossing rings (seeds 1 to 20)', () => {
  for (let seed = 1; seed <= 20; seed++) {
    const random = mulberry32(seed);
    const ring = (n: number): Vec2[] => Array.from({ length: n }, () => [random() * 100, random() * 100]);
    const rings = [ring(3 + (seed % 9)), ring(5)];
    const winding = windingIn(rings);
    for (let k = 0; k < 50; k++) {
      const p: Vec2 = [random() * 120 - 10, random() * 120 - 10];
      expect(winding(p), `seed ${seed}, point ${k}`).toBe(byAngles(rings, p) + 0); // -0 is 0
    }
  }
});

import { describe, expect, it } from 'vitest';
import { alongOutline, between, randomConvex, toPolygon } from '../../test/geometry/naive.js';
import { mulberry32 } from '../../bench/mulberry32.js';
import { type Planar, gapOf, shapeOf } from './shape.js';
import type { Vec2 } from './vec.js';

const placed = (polygon: readonly Vec2[], { c, s, x, y }: Planar): Vec2[] =>
  polygon.map((p): Vec2 => [c * p[0] - s * p[1] + x, s * p[0] + c * p[1] + y]);

/** The best gap along any edge normal of either polygon, outwards: written out plainly. */
const alongNormals = (a: readonly Vec2[], b: readonly Vec2[]): number => {
  const gaps = (from: readonly Vec2[], to: readonly Vec2[]): number[] => from.map((p, i) => {
    const q = from[(i + 1) % from.length]!;
    const size = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const n: Vec2 = [(q[1] - p[1]) / size, (p[0] - q[0]) / size];
    return Math.min(...to.map((r) => (r[0] - p[0]) * n[0] + (r[1] - p[1]) * n[1]));
  });
  return Math.max(...gaps(a, b), ...gaps(b, a));
};

describe('shapeOf', () => {
  it('a 3-4-5 triangle by hand', () => {
    const shape = shapeOf([[0, 0], [4, 0], [0, 3]]);
    expect([...shape.nx].map((v) => v + 0)).toEqual([0, 0.6, -1]);
    expect([...shape.ny].map((v) => v + 0)).toEqual([-1, 0.8, 0]);
    [0, 2.4, 0].forEach((d, i) => expect(shape.d[i]).toBeCloseTo(d, 12));
    expect(shape.reach).toBe(4);
    expect(shape.box).toEqual([0, 0, 4, 3]);
  });
});

describe('gapOf', () => {
  it('turned by 90 degrees and shifted, by hand', () => {
    // the 4 x 2 bar stands upright from x = 8 to 10, 3 mm from a square that ends at 5
    const bar = shapeOf([[0, 0], [4, 0], [4, 2], [0, 2]]);
    const block = shapeOf([[0, 0], [5, 0], [5, 5], [0, 5]]);
    expect(gapOf(bar, { c: 0, s: 1, x: 10, y: 0 }, block)).toBeCloseTo(3, 12);
    expect(gapOf(bar, { c: 0, s: 1, x: 6.5, y: 0 }, block)).toBeCloseTo(-0.5, 12);
  });

  it('random poses: the best normal, never more than the distance of dense points, and negative where they overlap (seed 31)', () => {
    const random = mulberry32(31);
    let [clear, hit] = [0, 0];
    for (let round = 0; round < 120; round++) {
      const [a, b] = [randomConvex(random, 15, [between(random, -10, 10), 3]), randomConvex(random, 15)];
      const turn = between(random, 0, 2 * Math.PI);
      const pose: Planar = { c: Math.cos(turn), s: Math.sin(turn), x: between(random, -25, 25), y: between(random, -25, 25) };
      const there = placed(a, pose);
      const gap = gapOf(shapeOf(a), pose, shapeOf(b));
      expect(gap, `round ${round}`).toBeCloseTo(alongNormals(there, b), 9);
      const dense = Math.min(...alongOutline(there, 0.2).map((p) => toPolygon(p, b)), ...alongOutline(b, 0.2).map((p) => toPolygon(p, there)));
      expect(gap, `round ${round}`).toBeLessThanOrEqual(dense + 1e-9);
      expect(gap > 1e-9, `round ${round}`).toBe(dense > 1e-9);
      if (dense > 0) clear++;
      else hit++;
      // stopping early changes no answer to the question it was stopped for
      for (const enough of [0, 1, 5]) {
        const early = gapOf(shapeOf(a), pose, shapeOf(b), enough);
        expect(early > enough, `round ${round}`).toBe(gap > enough);
        if (gap <= enough) expect(early).toBe(gap);
      }
    }
    expect(Math.min(clear, hit)).toBeGreaterThan(20);
  });
});

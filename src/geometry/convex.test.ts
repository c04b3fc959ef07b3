import { describe, expect, it } from 'vitest';
import { alongOutline, apart, between, inside, randomConvex, shoelace, toPolygon } from '../../test/geometry/naive.js';
import { mulberry32 } from '../../bench/mulberry32.js';
import { carried, distance, hull, offsetPlanes, separation } from './convex.js';
import type { Vec2 } from './vec.js';

const square: readonly Vec2[] = [[0, 0], [10, 0], [10, 10], [0, 10]];
const moved = (polygon: readonly Vec2[], x: number, y: number): Vec2[] => polygon.map((p): Vec2 => [p[0] + x, p[1] + y]);

/** Counter-clockwise with every corner a true left turn. */
const strictlyConvex = (polygon: readonly Vec2[]): boolean => polygon.every((a, i) => {
  const [b, c] = [polygon[(i + 1) % polygon.length]!, polygon[(i + 2) % polygon.length]!];
  return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) > 0;
});

describe('hull', () => {
  it('drops collinear and inner points and repeats', () => {
    expect(hull([[5, 0], [0, 0], [10, 10], [10, 0], [4, 4], [0, 10], [0, 0], [10, 5], [7, 10]])).toEqual(square);
  });

  it('holds every point, is convex, and its corners are given points that no triangle of the others holds (seed 21)', () => {
    const random = mulberry32(21);
    for (let round = 0; round < 60; round++) {
      const points = Array.from({ length: 3 + Math.floor(random() * 9) }, (): Vec2 => [between(random, -20, 20), between(random, -20, 20)]);
      const found = hull(points);
      expect(strictlyConvex(found)).toBe(true);
      for (const p of points) {
        const others = points.filter((q) => q !== p);
        const inner = others.some((a) => others.some((b) => others.some((c) => inside(p, [a, b, c]))));
        expect(found.includes(p), `round ${round}`).toBe(!inner);
      }
    }
  });
});

describe('carried', () => {
  it('a square up and right sweeps a hexagon of 100 + 2 x 10 x 3 mm2', () => {
    expect(shoelace(carried(square, [3, 3]))).toBeCloseTo(160, 9);
    expect(shoelace(carried(square, [0, -7]))).toBeCloseTo(170, 9);
  });

  it('holds what the polygon passes and no more (seed 22)', () => {
    const random = mulberry32(22);
    for (let round = 0; round < 20; round++) {
      const polygon = randomConvex(random, 20);
      const by: Vec2 = [between(random, -40, 40), between(random, -40, 40)];
      const swept = carried(polygon, by);
      const poses = Array.from({ length: 101 }, (_, k) => moved(polygon, (by[0] * k) / 100, (by[1] * k) / 100));
      expect(Math.max(...poses.flat().map((p) => toPolygon(p, swept))), `round ${round}`).toBeLessThan(1e-9);
      for (let k = 0; k < 60; k++) {
        const p: Vec2 = [between(random, -60, 60), between(random, -60, 60)];
        // between two poses a point may be missed by less than half their way, 0.29 mm
        if (inside(p, swept)) expect(Math.min(...poses.map((q) => toPolygon(p, q)))).toBeLessThan(0.29);
      }
    }
  });
});

describe('separation and distance', () => {
  it('by hand: side by side, corner to corner, overlapping, touching', () => {
    const beside = moved(square, 13, 4);
    expect(separation(square, beside)).toBeCloseTo(3, 12);
    expect(distance(square, beside)).toBeCloseTo(3, 12);
    const across = moved(square, 13, 14); // 3 and 4 apart: 5
    expect(separation(square, across)).toBeCloseTo(4, 12);
    expect(distance(square, across)).toBeCloseTo(5, 12);
    const over = moved(square, 8, 5);
    expect(separation(square, over)).toBeCloseTo(-2, 12);
    expect(distance(square, over)).toBeCloseTo(-2, 12);
    expect(distance(square, moved(square, 10, 0))).toBeCloseTo(0, 12);
  });

  it('a dense twin: points along both outlines (seed 23)', () => {
    const random = mulberry32(23);
    const step = 0.1;
    let [clear, hit] = [0, 0];
    for (let round = 0; round < 80; round++) {
      const a = randomConvex(random, 15);
      const b = randomConvex(random, 15, [between(random, -30, 30), between(random, -30, 30)]);
      const dense = Math.min(...alongOutline(a, step).map((p) => toPolygon(p, b)), ...alongOutline(b, step).map((p) => toPolygon(p, a)));
      const found = distance(a, b);
      const bound = separation(a, b);
      expect(bound).toBeCloseTo(separation(b, a), 9);
      expect(bound).toBeLessThanOrEqual(found + 1e-9);
      if (dense > 0) {
        clear++;
        expect(Math.abs(found - dense), `round ${round}`).toBeLessThan(1e-9); // a corner is among the points, so it is exact
      } else {
        hit++;
        expect(found, `round ${round}`).toBeLessThanOrEqual(1e-9);
      }
    }
    expect(Math.min(clear, hit)).toBeGreaterThan(15);
  });

  it('the depth is the shortest way out, tried in 3600 directions (seed 24)', () => {
    const random = mulberry32(24);
    let deep = 0;
    for (let round = 0; round < 12; round++) {
      const a = randomConvex(random, 15);
      const b = randomConvex(random, 15, [between(random, -8, 8), between(random, -8, 8)]);
      const depth = -distance(a, b);
      if (depth <= 0) continue;
      deep++;
      // in a direction n, b must go until its least along n passes a's greatest
      let least = Infinity;
      for (let k = 0; k < 3600; k++) {
        const n: Vec2 = [Math.cos((k * Math.PI) / 1800), Math.sin((k * Math.PI) / 1800)];
        least = Math.min(least, Math.max(...a.map((p) => p[0] * n[0] + p[1] * n[1])) - Math.min(...b.map((p) => p[0] * n[0] + p[1] * n[1])));
      }
      expect(depth).toBeLessThanOrEqual(least + 1e-9);
      // half a step of 0.1 degree over 60 mm of reach
      expect(least - depth, `round ${round}`).toBeLessThan(60 * Math.sin(Math.PI / 3600));
      // and moved out by as much along some direction they are apart: the naive overlap agrees
      expect(apart(a, b)).toBe(0);
    }
    expect(deep).toBeGreaterThan(5);
  });
});

describe('offsetPlanes', () => {
  it('holds every point within `by`, and its corners lie within 1.05 `by` (seed 25)', () => {
    const random = mulberry32(25);
    for (let round = 0; round < 60; round++) {
      const polygon = randomConvex(random, 20);
      const by = between(random, 0.1, 5);
      const planes = offsetPlanes(polygon, by);
      const holds = (p: Vec2, room: number): boolean => planes.every(({ n, d }) => n[0] * p[0] + n[1] * p[1] <= d + room);
      for (const { n } of planes) expect(Math.hypot(n[0], n[1])).toBeCloseTo(1, 12);
      const within = alongOutline(polygon, 4).flatMap((p) => Array.from({ length: 36 }, (_, k): Vec2 => [p[0] + by * Math.cos((k * Math.PI) / 18), p[1] + by * Math.sin((k * Math.PI) / 18)]));
      expect(within.every((p) => holds(p, 1e-9)), `round ${round}`).toBe(true);
      // every corner of the outline: where two planes meet and no other cuts it off
      let corners = 0;
      planes.forEach((p, i) => planes.slice(i + 1).forEach((q) => {
        const det = p.n[0] * q.n[1] - p.n[1] * q.n[0];
        if (Math.abs(det) < 1e-9) return;
        const meet: Vec2 = [(p.d * q.n[1] - q.d * p.n[1]) / det, (p.n[0] * q.d - q.n[0] * p.d) / det];
        if (!holds(meet, 1e-9)) return;
        corners++;
        expect(toPolygon(meet, polygon) / by, `round ${round}`).toBeLessThanOrEqual(1.05 + 1e-9);
      }));
      expect(corners).toBeGreaterThanOrEqual(planes.length);
    }
  });

  it('a corner that turns by 36 degrees is bevelled: one tangent more than a plain mitre, which would leave 5.15 %', () => {
    const ten = Array.from({ length: 10 }, (_, i): Vec2 => [10 * Math.cos((i * Math.PI) / 5), 10 * Math.sin((i * Math.PI) / 5)]);
    expect(offsetPlanes(ten, 1)).toHaveLength(20);
    expect(offsetPlanes(square, 1)).toHaveLength(12);
  });
});

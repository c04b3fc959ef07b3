import { describe, expect, it } from 'vitest';
import { alongOutline, between, shoelace } from '../../test/geometry/naive.js';
import { mulberry32 } from '../../bench/mulberry32.js';
import { type Contour, arcOf, bounds, circle, flatten, reversed, signedArea, vertex } from './contour.js';

/** tan(90 deg / 4): a quarter circle. */
const QUARTER = Math.tan(Math.PI / 8);

/** A 40 x 20 plate with both right corners rounded by 5. */
const rounded: Contour = [
  vertex(0, 0), vertex(35, 0, QUARTER), vertex(40, 5), vertex(40, 15, QUARTER), vertex(35, 20), vertex(0, 20),
];

/** A 10 x 10 square whose right edge is bitten by a half circle of radius 5, run as a hole is in the plate. */
const bitten: Contour = [vertex(0, 0), vertex(10, 0, -1), vertex(10, 10), vertex(0, 10)];

describe('arcOf', () => {
  it('a quarter turn left and right from (5, 0)', () => {
    const left = arcOf([5, 0], [0, 5], QUARTER);
    expect(left.radius).toBeCloseTo(5, 12);
    left.centre.forEach((c) => expect(c).toBeCloseTo(0, 12));
    const right = arcOf([5, 0], [0, 5], -QUARTER);
    right.centre.forEach((c) => expect(c).toBeCloseTo(5, 12));
  });

  it('three quarters of a circle', () => {
    const { centre, radius } = arcOf([5, 0], [0, -5], Math.tan((3 * Math.PI) / 8));
    expect(radius).toBeCloseTo(5, 12);
    centre.forEach((c) => expect(c).toBeCloseTo(0, 12));
  });
});

describe('signedArea', () => {
  it('arcs count in full', () => {
    expect(signedArea(rounded)).toBeCloseTo(800 - 2 * (25 - (25 * Math.PI) / 4), 9);
    expect(signedArea(bitten)).toBeCloseTo(100 - (25 * Math.PI) / 2, 9);
    expect(signedArea(circle(7, -3, 4))).toBeCloseTo(16 * Math.PI, 9);
    expect(signedArea(circle(7, -3, 4, true))).toBeCloseTo(-16 * Math.PI, 9);
    // a circle of radius 5 without its quarter in the fourth quadrant, closed over the centre
    expect(signedArea([vertex(0, 0), vertex(5, 0, Math.tan((3 * Math.PI) / 8)), vertex(0, -5)])).toBeCloseTo(25 * Math.PI * 0.75, 9);
  });
});

describe('reversed', () => {
  it('the first corner stays, each edge keeps its arc and turns the other way', () => {
    expect(reversed([vertex(0, 0), vertex(10, 0, -1), vertex(10, 10, 0.2), vertex(0, 10)])).toEqual([
      vertex(0, 0), vertex(0, 10, -0.2), vertex(10, 10, 1), vertex(10, 0),
    ]);
  });

  it('twice is the same, and the area changes its sign', () => {
    for (const contour of [rounded, bitten, circle(1, 2, 3)]) {
      expect(reversed(reversed(contour))).toEqual(contour);
      expect(signedArea(reversed(contour))).toBeCloseTo(-signedArea(contour), 9);
    }
  });
});

describe('bounds', () => {
  it('a bulge that stands out of its corners, and one that does not', () => {
    expect(bounds([rounded])).toEqual([[0, 0], [40, 20]]);
    const out = bounds([[vertex(0, 0), vertex(10, 0, 1), vertex(10, 10), vertex(0, 10)]]);
    expect(out[1][0]).toBeCloseTo(15, 12); // a half circle of radius 5 outwards
    expect(bounds([bitten])).toEqual([[0, 0], [10, 10]]);
    const both = bounds([circle(0, 0, 2), circle(10, 1, 3, true)]);
    [[-2, -2], [13, 4]].forEach((corner, i) => corner.forEach((c, k) => expect(both[i]![k]).toBeCloseTo(c, 12)));
  });

  it('an arc over 45 to 135 degrees peaks at its radius', () => {
    const h = 10 * Math.SQRT1_2;
    const [low, high] = bounds([[vertex(h, h, QUARTER), vertex(-h, h)]]);
    expect(high[1]).toBeCloseTo(10, 12);
    expect([low[0], low[1], high[0]].map((v) => v.toFixed(9))).toEqual([-h, h, h].map((v) => v.toFixed(9)));
  });

  it('against the outline cut fine, random arcs (seed 11)', () => {
    const random = mulberry32(11);
    for (let round = 0; round < 60; round++) {
      const contour = Array.from({ length: 4 }, () => vertex(between(random, -50, 50), between(random, -50, 50), between(random, -2, 2)));
      const points = flatten(contour, 1e-5);
      const [low, high] = bounds([contour]);
      for (const k of [0, 1] as const) {
        const fine = points.map((p) => p[k]);
        expect(Math.abs(Math.min(...fine) - low[k]), `round ${round}`).toBeLessThan(2e-5);
        expect(Math.abs(Math.max(...fine) - high[k]), `round ${round}`).toBeLessThan(2e-5);
      }
    }
  });
});

describe('flatten', () => {
  it('straight edges keep their corners', () => {
    expect(flatten([vertex(0, 0), vertex(3, 0), vertex(0, 4)], 0.01)).toEqual([[0, 0], [3, 0], [0, 4]]);
  });

  it.each([[0.5, 0.02], [5, 0.02], [30, 0.001], [400, 0.02], [5000, 0.02], [5000, 0.001]])(
    'radius %d: no chord leaves the arc by more than %d mm, and corners lie on it',
    (radius, error) => {
      const points = flatten(circle(0, 0, radius), error);
      for (const [i, p] of points.entries()) {
        const q = points[(i + 1) % points.length]!;
        expect(Math.hypot(p[0], p[1])).toBeCloseTo(radius, 8);
        expect(radius - Math.hypot((p[0] + q[0]) / 2, (p[1] + q[1]) / 2)).toBeLessThanOrEqual(error * (1 + 1e-6));
      }
      // an even cut, so no more than one piece in each half above the least there can be
      expect(points.length).toBeLessThanOrEqual(2 * Math.max(2, Math.ceil(Math.PI / (2 * Math.acos(Math.max(0, 1 - error / radius))) + 1)));
    },
  );

  it('an arc of more than half a circle goes the long way, clockwise too', () => {
    const big = Math.tan((3 * Math.PI) / 8);
    for (const way of [1, -1]) {
      const points = flatten([vertex(5, 0, way * big), vertex(0, -5 * way)], 0.01);
      expect(Math.abs(shoelace(points))).toBeGreaterThan(25 * Math.PI * 0.75);
      for (const p of alongOutline(points.slice(0, -1), 100)) expect(Math.hypot(p[0], p[1])).toBeCloseTo(5, 9);
      expect(points.some((p) => Math.hypot(p[0] + 5, p[1]) < 0.5)).toBe(true);
    }
  });
});

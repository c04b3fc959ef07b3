import { describe, expect, it } from 'vitest';
import type { Convex, Vec2 } from '../geometry/index.js';
import { leastShift } from './leastShift.js';

const box = (x0: number, x1: number, y0: number, y1: number): Convex => [[x0, y0], [x1, y0], [x1, y1], [x0, y1]];
const shifted = (polygon: Convex, [x, y]: Vec2): Convex => polygon.map(([a, b]): Vec2 => [a + x, b + y]);

describe('the least shift out of an overlap', () => {
  it('a strip 7 into a wall goes back by 7', () => {
    expect(leastShift([box(-50, 7, 0, 1.5)], [box(0, 30, -40, 40)])).toEqual({ by: 7, towards: [-1, 0] });
  });

  it('a strip right through a wall cut in two goes the same way as through the wall in one piece', () => {
    const strip = box(-2, 12, 0, 1.5);
    // a wall 10 thick, from -5 up to 40: down by 1.5 + 5 is the least
    const whole = leastShift([strip], [box(0, 10, -5, 40)]);
    expect(whole.by).toBeCloseTo(6.5, 9);
    const halves = leastShift([strip], [box(0, 10, -5, 3), box(0, 10, 3, 40)]);
    expect(halves.by).toBeCloseTo(6.5, 9);
    expect(halves.towards[1]).toBeCloseTo(-1, 9);
  });

  it('a pocket counts as room: a strip of 1.5 in a gap of 4 between two plates is moved into it', () => {
    // lower plate up to 0, upper from 4: the strip stands 0.5 deep in the lower one
    expect(leastShift([box(0, 10, -0.5, 1)], [box(-5, 15, -20, 0), box(-5, 15, 4, 30)])).toEqual({ by: 0.5, towards: [0, 1] });
  });

  it('apart by the corners: 3 and 4 make 5', () => {
    const { by } = leastShift([box(0, 1, 0, 1)], [box(4, 9, 5, 9)]);
    expect(by).toBeCloseTo(-5, 12);
  });

  it('seeded (91): the shift clears, nothing shorter in any of 90 directions does', () => {
    let state = 91;
    const random = (): number => {
      state = (state * 1103515245 + 12345) % 2147483648;
      return state / 2147483648;
    };
    const meets = (a: Convex, b: Convex): boolean => {
      const axes = [...a.map((p, i) => [p, a[(i + 1) % a.length]!] as const), ...b.map((p, i) => [p, b[(i + 1) % b.length]!] as const)];
      return axes.every(([p, q]) => {
        const n: Vec2 = [q[1] - p[1], p[0] - q[0]];
        const along = (s: Convex): number[] => s.map((v) => v[0] * n[0] + v[1] * n[1]);
        const [one, two] = [along(a), along(b)];
        const touch = 1e-9 * Math.hypot(...n);
        return Math.max(...one) > Math.min(...two) + touch && Math.max(...two) > Math.min(...one) + touch;
      });
    };
    let overlapping = 0;
    for (let round = 0; round < 24; round++) {
      const piece = (): Convex => {
        const [x, y, w, h] = [random() * 10, random() * 10, 1 + random() * 6, 1 + random() * 6];
        // every second round of boxes as they stand, the others turned
        const turned = round % 2 === 0 ? 0 : random() * Math.PI;
        const [c, s] = [Math.cos(turned), Math.sin(turned)];
        return box(-w / 2, w / 2, -h / 2, h / 2).map(([a, b]): Vec2 => [x + w / 2 + c * a - s * b, y + h / 2 + s * a + c * b]);
      };
      const [moving, still] = [[piece(), piece()], [piece(), piece(), piece()]];
      const { by, towards } = leastShift(moving, still);
      if (by <= 0) continue;
      overlapping++;
      const clear = (shift: Vec2): boolean => moving.every((m) => still.every((s) => !meets(shifted(m, shift), s)));
      // it may touch there: in a corner between two slanting pieces the way on is not the way so far
      expect(clear([towards[0] * by, towards[1] * by]), `round ${round}`).toBe(true);
      for (let k = 0; k < 90; k++) {
        const a = (k * Math.PI) / 45;
        for (const share of [0.3, 0.7, 0.999]) expect(clear([Math.cos(a) * by * share, Math.sin(a) * by * share])).toBe(false);
      }
    }
    expect(overlapping).toBeGreaterThan(8);
  });
});

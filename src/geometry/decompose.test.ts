import { type Paths64, FillRule, area, union } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { between, inside, shoelace } from '../../test/geometry/naive.js';
import { mulberry32 } from '../../bench/mulberry32.js';
import { convexPieces } from './decompose.js';
import type { Vec2 } from './vec.js';

/** A star about `at`: corners in rising angle at random radii, so simple but seldom convex. */
const star = (random: () => number, count: number, low: number, high: number, at: Vec2 = [0, 0]): Vec2[] =>
  Array.from({ length: count }, (_, i): Vec2 => {
    const a = ((i + between(random, 0, 0.8)) * 2 * Math.PI) / count;
    const r = between(random, low, high);
    return [at[0] + r * Math.cos(a), at[1] + r * Math.sin(a)];
  });

/** No corner turns right by more than rounding, and the corners go round once. */
const isConvex = (piece: readonly Vec2[]): boolean => {
  let turned = 0;
  const left = piece.every((a, i) => {
    const [b, c] = [piece[(i + 1) % piece.length]!, piece[(i + 2) % piece.length]!];
    const [e, f] = [[b[0] - a[0], b[1] - a[1]], [c[0] - b[0], c[1] - b[1]]] as const;
    const cross = e[0] * f[1] - e[1] * f[0];
    turned += Math.atan2(cross, e[0] * f[0] + e[1] * f[1]);
    return cross >= -1e-9;
  });
  return left && Math.abs(turned - 2 * Math.PI) < 1e-6;
};

/** Micrometres: another engine's union works on whole numbers, so an area is good to its edges' length x 0.5 micrometre. */
const SCALE = 1000;
const unionArea = (pieces: readonly (readonly Vec2[])[]): number => {
  const paths: Paths64 = pieces.map((p) => p.map(([x, y]) => ({ x: Math.round(x * SCALE), y: Math.round(y * SCALE) })));
  return union(paths, FillRule.NonZero).reduce((sum, path) => sum + area(path), 0) / SCALE ** 2;
};

const check = (outline: readonly Vec2[], holes: readonly (readonly Vec2[])[], random: () => number, label: string): void => {
  const pieces = convexPieces(outline, holes);
  expect(pieces.every(isConvex), label).toBe(true);
  const whole = Math.abs(shoelace(outline)) - holes.reduce((sum, h) => sum + Math.abs(shoelace(h)), 0);
  const sum = pieces.reduce((total, p) => total + shoelace(p), 0);
  expect(sum, label).toBeCloseTo(whole, 6);
  // pieces that overlapped would unite to less than their sum
  const edges = pieces.reduce((total, p) => total + p.reduce((l, a, i) => l + Math.hypot(a[0] - p[(i + 1) % p.length]![0], a[1] - p[(i + 1) % p.length]![1]), 0), 0);
  expect(Math.abs(unionArea(pieces) - sum), label).toBeLessThan(edges / SCALE);
  for (let k = 0; k < 100; k++) {
    const p: Vec2 = [between(random, -60, 60), between(random, -60, 60)];
    const held = inside(p, outline) && !holes.some((h) => inside(p, h));
    expect(pieces.filter((piece) => inside(p, piece)).length, label).toBe(held ? 1 : 0);
  }
};

describe('convexPieces', () => {
  it('a convex outline is one piece, an L is two, whichever way it is run', () => {
    const square: Vec2[] = [[0, 0], [10, 0], [10, 10], [0, 10]];
    expect(convexPieces(square)).toHaveLength(1);
    const ell: Vec2[] = [[0, 0], [10, 0], [10, 4], [4, 4], [4, 10], [0, 10]];
    for (const outline of [ell, [...ell].reverse()]) {
      const pieces = convexPieces(outline);
      expect(pieces).toHaveLength(2);
      expect(pieces.reduce((sum, p) => sum + shoelace(p), 0)).toBeCloseTo(64, 12);
    }
  });

  it('corners on a straight edge: a bar with six of them along its sides (points from seed 1)', () => {
    check([[0, 0], [5, 0], [20, 0], [20, 5], [20, 10], [12, 10], [7, 10], [0, 10], [0, 3]], [], mulberry32(1), 'bar');
  });

  it('a square frame: four times the least number of pieces (four) at most (points from seed 2)', () => {
    const outline: Vec2[] = [[-20, -20], [20, -20], [20, 20], [-20, 20]];
    const hole: Vec2[] = [[-5, -5], [-5, 5], [5, 5], [5, -5]];
    check(outline, [hole], mulberry32(2), 'frame');
    expect(convexPieces(outline, [hole]).length).toBeLessThanOrEqual(16);
  });

  it('random stars (seed 51)', () => {
    const random = mulberry32(51);
    for (let round = 0; round < 30; round++) check(star(random, 5 + Math.floor(random() * 30), 15, 50), [], random, `round ${round}`);
  });

  it('random stars with holes, both ways round (seed 52)', () => {
    const random = mulberry32(52);
    for (let round = 0; round < 24; round++) {
      const outline = star(random, 6 + Math.floor(random() * 20), 30, 50);
      const centres: Vec2[] = [[0, 0], [0, 12], [11, -6], [-11, -6]];
      const holes = centres.slice(0, 1 + (round % 4)).map((c) => star(random, 3 + Math.floor(random() * 6), 2, 5.5, c));
      check(outline, round % 2 === 0 ? holes : holes.map((h) => [...h].reverse()), random, `round ${round}`);
    }
  });
});

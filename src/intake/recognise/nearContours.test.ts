import { expect, it } from 'vitest';
import { mulberry32 } from '../../../bench/mulberry32.js';
import type { Vec2 } from '../../geometry/index.js';
import { hugs, mirrored, plainlyApart, plainlyOverlap } from './nearContours.js';
import { overlapArea } from './region.js';

const SEED = 7;

/** A star-shaped loop of n corners about a point. */
const star = (random: () => number, [x, y]: Vec2, n: number): Vec2[] =>
  Array.from({ length: n }, (_, i) => {
    const r = 2 + 6 * random();
    return [x + r * Math.cos((2 * Math.PI * i) / n), y + r * Math.sin((2 * Math.PI * i) / n)];
  });

it(`says nothing of two loops that clipping does not say too, seed ${SEED}`, () => {
  const random = mulberry32(SEED);
  let [apart, over, neither] = [0, 0, 0];
  for (let k = 0; k < 400; k++) {
    const a = star(random, [0, 0], 5 + Math.floor(20 * random()));
    const b = star(random, [40 * random() - 20, 16 * random() - 8], 5 + Math.floor(20 * random()));
    const area = overlapArea([a], [b]);
    if (plainlyApart(a, b)) {
      apart++;
      expect(area, `pair ${k}`).toBeLessThan(1e-9);
    }
    if (plainlyOverlap(a, b)) {
      over++;
      expect(area, `pair ${k}`).toBeGreaterThan(1e-4);
    }
    if (!plainlyApart(a, b) && !plainlyOverlap(a, b)) neither++;
  }
  expect(apart).toBeGreaterThan(20);
  expect(over).toBeGreaterThan(100);
  expect(neither).toBeLessThan(40);
});

it('a loop hugs another that leaves it by less than the modelling tolerance, not one that leaves it by more', () => {
  const square: Vec2[] = [[0, 0], [10, 0], [10, 10], [0, 10]];
  expect(hugs([[0.004, 0.003], [5, -0.004], [10, 0], [10, 10], [0, 10]], square)).toBe(true);
  expect(hugs([[0, 0], [5, -0.006], [10, 0], [10, 10], [0, 10]], square)).toBe(false);
});

it('two skins are mirrored when every loop has its like, run the other way, wherever it begins', () => {
  const plate: Vec2[] = [[0, 0], [30, 0], [30, 20], [0, 20]];
  const hole: Vec2[] = [[5, 5], [5, 8], [9, 8]];
  const back = (loop: readonly Vec2[], first: number): Vec2[] => [...loop.slice(first), ...loop.slice(0, first)].reverse();
  expect(mirrored([plate, hole], [back(hole, 2), back(plate, 1)])).toBe(true);
  expect(mirrored([plate, hole], [back(plate, 1)])).toBe(false);
  // run the same way, and a corner moved by a hundredth
  expect(mirrored([plate], [plate])).toBe(false);
  expect(mirrored([plate], [back(plate.map(([x, y], i): Vec2 => [i === 2 ? x + 0.01 : x, y]), 0)])).toBe(false);
});

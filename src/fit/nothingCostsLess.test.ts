import { expect, it } from 'vitest';
import type { Cheapest } from './fitBoard.js';
import { leavesDrawings } from './nothingCostsLess.js';

const set = (cannot: readonly number[], asked: readonly number[]): Cheapest => ({
  machines: [], options: [], tools: [], price: 1, currency: 'EUR', proven: true, bound: 1, model: '', cannot, asked: asked.map((part) => ({ part, what: 'Made in two' })),
});

it('a set over all machines leaves a drawing that one machine alone would change', () => {
  // part 1 is made whole by the other machine; part 0 by none
  expect(leavesDrawings({ cheapest: set([], [0]), alone: [set([], [0, 1]), set([1], [0])] })).toBe(true);
  expect(leavesDrawings({ cheapest: set([], [0, 1]), alone: [set([], [0, 1])] })).toBe(false);
  expect(leavesDrawings({ cheapest: set([2], []), alone: [set([2], []), null] })).toBe(false);
  expect(leavesDrawings({ cheapest: set([], []), drawingsFree: set([], [0]), alone: [] })).toBe(true);
  expect(leavesDrawings({ cheapest: null, alone: [] })).toBe(false);
});

import { expect, it } from 'vitest';
import { mostFirst } from './mostFirst.js';

const sum = (...made: readonly number[]) => ({ levels: made.map((m) => ({ words: '', made: m, more: 0 })) });

it('the machine that makes most as it stands comes first, then the one that makes most with changes, then the one given first', () => {
  expect(mostFirst([sum(1, 4), sum(3, 3), sum(3, 5), sum(3, 5)])).toEqual([2, 3, 1, 0]);
  expect(mostFirst([])).toEqual([]);
});

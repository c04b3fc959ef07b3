import { describe, expect, it } from 'vitest';
import { dayLists } from './dayLists.js';

const ids = (n: number, from = 0): string[] => Array.from({ length: n }, (_, i) => `t-${from + i}`);

describe('the days of one machine', () => {
  it('hold all that is made, however many, and no more than a day can plan', () => {
    for (const count of [1, 16, 17, 20, 33]) {
      const lists = dayLists(ids(count), ids(3, 100));
      expect(lists.flatMap(({ trials, made }) => trials.slice(0, made))).toEqual(ids(count));
      expect(Math.max(...lists.map(({ trials }) => trials.length))).toBeLessThanOrEqual(16);
      expect(lists.every(({ made }) => made > 0)).toBe(true);
    }
    expect(dayLists(ids(20), []).map(({ made }) => made)).toEqual([10, 10]);
  });

  it('take along what is not made as far as there is room; there is none where nothing is made', () => {
    expect(dayLists(ids(15), ids(3, 100))).toEqual([{ made: 15, trials: [...ids(15), 't-100'] }]);
    expect(dayLists(ids(17), ids(3, 100)).map(({ trials }) => trials.length)).toEqual([12, 8]);
    expect(dayLists([], ids(3))).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { mulberry32 } from '../../bench/mulberry32.js';
import { type Interval, covers, meets, mirrored, union, windowAbout } from './intervals.js';

describe('by hand', () => {
  it('union joins what touches, drops what is reversed and keeps a single point', () => {
    expect(union([[5, 7], [0, 2], [2, 3], [9, 8], [6, 10], [12, 12]])).toEqual([[0, 3], [5, 10], [12, 12]]);
    expect(union([])).toEqual([]);
    expect(union([[0, 10], [2, 3]])).toEqual([[0, 10]]);
  });

  it('meets asks for more than ends, covers for all of it in one piece', () => {
    expect(meets([[0, 2], [4, 6]], [2, 4])).toBe(false);
    expect(meets([[0, 2], [4, 6]], [2, 4.1])).toBe(true);
    expect(covers([[0, 2], [4, 6]], [4, 6])).toBe(true);
    expect(covers([[0, 2], [4, 6]], [1, 5])).toBe(false);
  });

  it('windowAbout is bounded by the nearest on each side', () => {
    expect(windowAbout([[-9, -8], [-5, -3], [4, 6], [20, 30]], [0, 2])).toEqual([-3, 4]);
    expect(windowAbout([[-5, 0], [2, 6]], [0, 2])).toEqual([0, 2]);
    expect(windowAbout([], [0, 2])).toEqual([-Infinity, Infinity]);
    expect(windowAbout([[1, 1.5]], [0, 2])).toBeNull();
  });

  it('mirrored keeps the rising order', () => {
    expect(mirrored([[-3, -1], [4, 6]])).toEqual([[-6, -4], [1, 3]]);
  });
});

/** Intervals on whole numbers against the unit cells they hold: cell i runs from i to i + 1. */
describe('against unit cells (seed 12)', () => {
  const CELLS = 40;
  const random = mulberry32(12);
  const whole = (): number => Math.floor(random() * (CELLS + 1));
  const cells = (set: readonly Interval[]): boolean[] =>
    Array.from({ length: CELLS }, (_, i) => set.some(([a, b]) => a <= i && i + 1 <= b));

  it('union, meets, covers, windowAbout, mirrored', () => {
    let [open, shut] = [0, 0];
    for (let round = 0; round < 400; round++) {
      const parts = Array.from({ length: 1 + Math.floor(random() * 5) }, (): Interval => {
        const a = whole();
        return [a, Math.min(CELLS, a + 1 + Math.floor(random() * 8))];
      }).filter(([a, b]) => b > a);
      const set = union(parts);
      const held = cells(parts);
      expect(cells(set)).toEqual(held);
      for (let i = 1; i < set.length; i++) expect(set[i]![0]).toBeGreaterThan(set[i - 1]![1]);
      expect(cells(mirrored(set).map(([a, b]): Interval => [a + CELLS, b + CELLS]))).toEqual([...held].reverse());

      const a = Math.floor(random() * CELLS);
      const b = Math.min(CELLS, a + 1 + Math.floor(random() * 4));
      const inAB = held.slice(a, b);
      expect(meets(set, [a, b])).toBe(inAB.includes(true));
      expect(covers(set, [a, b])).toBe(!inAB.includes(false));
      const window = windowAbout(set, [a, b]);
      expect(window === null).toBe(inAB.includes(true));
      if (!window) {
        shut++;
        continue;
      }
      open++;
      const [before, after] = [held.lastIndexOf(true, Math.max(0, a - 1)), held.indexOf(true, b)];
      expect(window).toEqual([a === 0 || before < 0 ? -Infinity : before + 1, after < 0 ? Infinity : after]);
    }
    expect(Math.min(open, shut)).toBeGreaterThan(50);
  });
});

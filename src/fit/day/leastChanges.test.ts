import { describe, expect, it } from 'vitest';
import { mulberry32 } from '../../../bench/mulberry32.js';
import { type ChangeCost, leastChanges } from './leastChanges.js';

/** Every order, one after another. */
const permutations = (items: readonly number[]): number[][] =>
  items.length <= 1 ? [[...items]] : items.flatMap((it) => permutations(items.filter((other) => other !== it)).map((rest) => [it, ...rest]));

const costOf = (order: readonly number[], cost: (a: number | null, b: number) => ChangeCost): readonly [number, number] =>
  order.reduce<readonly [number, number]>(([changes, seconds], b, i) => {
    const c = cost(i === 0 ? null : order[i - 1]!, b);
    return [changes + c.changes, seconds + c.seconds];
  }, [0, 0]);

describe('the order of least tool changes', () => {
  for (const seed of [1, 2, 3]) {
    it(`is as cheap as the best of all orders (seed ${seed})`, () => {
      const random = mulberry32(seed);
      for (let round = 0; round < 40; round++) {
        const count = 1 + Math.floor(random() * 6);
        // few different numbers of changes, so that seconds have to decide often
        const table = Array.from({ length: count + 1 }, () => Array.from({ length: count }, () => ({ changes: Math.floor(random() * 4), seconds: Math.floor(random() * 500) })));
        const cost = (a: number | null, b: number): ChangeCost => table[a === null ? count : a]![b]!;
        const found = leastChanges(count, cost);
        expect([...found.order].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
        expect(costOf(found.order, cost)).toEqual([found.changes, found.seconds]);
        const least = permutations(Array.from({ length: count }, (_, i) => i)).map((order) => costOf(order, cost))
          .reduce((a, b) => (b[0] < a[0] || (b[0] === a[0] && b[1] < a[1]) ? b : a));
        expect([found.changes, found.seconds]).toEqual(least);
      }
    });
  }

  it('keeps the order as given where every order costs the same', () => {
    expect(leastChanges(5, () => ({ changes: 1, seconds: 60 })).order).toEqual([0, 1, 2, 3, 4]);
  });

  it('orders 16 parts at once: no list is kept for each of the million entries', () => {
    const used = process.cpuUsage();
    const { order } = leastChanges(16, (a, b) => ({ changes: a === null ? 1 : (a * 7 + b * 3) % 5, seconds: (a ?? 0) + b }));
    const { user, system } = process.cpuUsage(used);
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: 16 }, (_, k) => k));
    expect((user + system) / 1e6).toBeLessThan(2);
  });
});

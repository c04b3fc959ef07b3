import { describe, expect, it } from 'vitest';
import { type Way, cheapestSet } from './cheapestSet.js';

/** mulberry32 (public domain): a seeded generator, so that a failure can be seen again. */
const seeded = (seed: number) => (): number => {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
};

/** Every subset of the items, by counting in binary: the least price that makes all parts that any subset makes. */
const exhaustive = (parts: readonly (readonly Way[])[], priceOf: ReadonlyMap<string, number>): number => {
  const items = [...priceOf.keys()];
  const can = parts.filter((ways) => ways.some((w) => w.every((item) => priceOf.has(item))));
  let least = Infinity;
  for (let set = 0; set < 2 ** items.length; set++) {
    const has = new Set(items.filter((_, i) => (set & (1 << i)) !== 0));
    if (can.every((ways) => ways.some((w) => w.every((item) => has.has(item))))) {
      least = Math.min(least, [...has].reduce((sum, item) => sum + priceOf.get(item)!, 0));
    }
  }
  return least;
};

describe('the cheapest set', () => {
  it('equals exhaustive search on 200 seeded small cases', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const random = seeded(seed);
      const whole = (n: number): number => Math.floor(random() * n);
      const items = Array.from({ length: 3 + whole(8) }, (_, i) => `item ${i}`);
      const priceOf = new Map(items.map((item) => [item, whole(50)]));
      const parts = Array.from({ length: 1 + whole(8) }, () =>
        Array.from({ length: whole(5) }, () => Array.from({ length: whole(4) }, () => items[whole(items.length)]!)));
      const found = cheapestSet(parts, priceOf);
      expect(found.price, `seed ${seed}`).toBe(exhaustive(parts, priceOf));
      expect(found.proven, `seed ${seed}`).toBe(true);
      expect(found.chosen.reduce((sum, item) => sum + priceOf.get(item)!, 0), `seed ${seed}`).toBe(found.price);
      const has = new Set(found.chosen);
      parts.forEach((ways, i) => {
        if (!found.cannot.includes(i)) expect(ways.some((w) => w.every((item) => has.has(item))), `seed ${seed}, part ${i}`).toBe(true);
        else expect(ways, `seed ${seed}, part ${i}`).toEqual([]);
      });
    }
  });

  it('pays for a thing once: one dear machine for all beats two cheap ones', () => {
    // a makes 0 and 1, b makes 1 and 2, c makes all: 60 + 50 = 110 against 100
    const found = cheapestSet([[['a'], ['c']], [['a'], ['b'], ['c']], [['b'], ['c']]], new Map([['a', 60], ['b', 50], ['c', 100]]));
    expect(found).toMatchObject({ chosen: ['c'], price: 100, proven: true });
  });

  it('leaves out what nothing makes and what nobody priced, and names it', () => {
    expect(cheapestSet([[], [['a']], [['unpriced']]], new Map([['a', 5]]))).toMatchObject({ chosen: ['a'], price: 5, cannot: [0, 2] });
  });

  it('cut short, it says so with the gap', () => {
    const found = cheapestSet([[['a'], ['b']], [['b'], ['c']], [['c'], ['a']]], new Map([['a', 2], ['b', 2], ['c', 2]]), 0);
    expect(found.proven).toBe(false);
    // two of the three are needed; the first one found stands, and no part alone costs less than 2
    expect(found.price).toBeGreaterThanOrEqual(4);
    expect(found.bound).toBe(2);
  });
});

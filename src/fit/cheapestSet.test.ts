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
    const price = [...has].reduce((sum, item) => sum + priceOf.get(item)!, 0);
    if (price < least && can.every((ways) => ways.some((w) => w.every((item) => has.has(item))))) least = price;
  }
  return least;
};

interface Case {
  readonly parts: readonly (readonly Way[])[];
  readonly priceOf: ReadonlyMap<string, number>;
}

/** Any ways over any items, empty ways and parts without ways among them. */
const anyCase = (seed: number): Case => {
  const random = seeded(seed);
  const whole = (n: number): number => Math.floor(random() * n);
  const items = Array.from({ length: 3 + whole(8) }, (_, i) => `item ${i}`);
  const priceOf = new Map(items.map((item) => [item, whole(50)]));
  const parts = Array.from({ length: 1 + whole(8) }, () =>
    Array.from({ length: whole(5) }, () => Array.from({ length: whole(4) }, () => items[whole(items.length)]!)));
  return { parts, priceOf };
};

/** As a board asks it: machines, each with two options of its own; a part is made on a machine as it stands, or with one option of it. */
const boardCase = (seed: number): Case => {
  const random = seeded(seed);
  const whole = (n: number): number => Math.floor(random() * n);
  const machines = Array.from({ length: 2 + whole(3) }, (_, i) => `m${i}`);
  const priceOf = new Map(machines.flatMap((m) => [[m, 20 + whole(60)], [`${m}/a`, 1 + whole(25)], [`${m}/b`, 1 + whole(25)]] as const));
  const parts = Array.from({ length: 2 + whole(5) }, () => {
    const ways = machines.flatMap((m): readonly Way[] => {
      const how = whole(4);
      return how === 0 ? [] : how === 1 ? [[m]] : [[m, `${m}/${how === 2 ? 'a' : 'b'}`]];
    });
    return ways.length > 0 ? ways : [[machines[whole(machines.length)]!]];
  });
  return { parts, priceOf };
};

const checkCase = ({ parts, priceOf }: Case, named: string): void => {
  const found = cheapestSet(parts, priceOf);
  expect(found.price, named).toBe(exhaustive(parts, priceOf));
  expect(found.proven, named).toBe(true);
  expect(found.chosen.reduce((sum, item) => sum + priceOf.get(item)!, 0), named).toBe(found.price);
  const has = new Set(found.chosen);
  parts.forEach((ways, i) => {
    if (!found.cannot.includes(i)) expect(ways.some((w) => w.every((item) => has.has(item))), `${named}, part ${i}`).toBe(true);
    else expect(ways, `${named}, part ${i}`).toEqual([]);
  });
};

describe('the cheapest set', () => {
  // 773: a bound that adds what the missing parts would cost, as if a thing were paid for in each of them, misses the cheapest
  it('equals exhaustive search on 200 seeded small cases and seed 773', () => {
    for (const seed of [...Array.from({ length: 200 }, (_, i) => i + 1), 773]) checkCase(anyCase(seed), `seed ${seed}`);
  });

  it('equals exhaustive search on 200 seeded boards: machines and their options, each paid for once', () => {
    for (let seed = 1; seed <= 200; seed++) checkCase(boardCase(seed), `seed ${seed}`);
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

import { describe, expect, it } from 'vitest';
import { mulberry32 } from '../../bench/mulberry32.js';
import { demoRack } from '../shop/index.js';
import { type Stock, compose, lengthFor, plainStock, without } from './segments.js';

/** Every length that a stock makes up and the fewest segments for it: each choice of counts in turn. */
const enumerated = (stock: Stock): ReadonlyMap<number, number> => {
  let sums = new Map([[0, 0]]);
  for (const [length, count] of stock) {
    const next = new Map<number, number>();
    for (const [sum, parts] of sums) {
      for (let n = 0; n <= count; n++) {
        const at = sum + n * length;
        next.set(at, Math.min(next.get(at) ?? Infinity, parts + n));
      }
    }
    sums = next;
  }
  return sums;
};

const sum = (parts: readonly number[]): number => parts.reduce((a, b) => a + b, 0);

/** Are `parts` in the stock, longest first, and `length` mm in all? */
const holds = (stock: Stock, length: number, parts: readonly number[]): void => {
  const inOrder = parts.every((p, i) => i === 0 || parts[i - 1]! >= p);
  const inStock = parts.every((part) => parts.filter((p) => p === part).length <= (stock.get(part) ?? 0));
  if (!inOrder || !inStock || sum(parts) !== length) expect.fail(`${length} mm as ${parts.join()} of ${JSON.stringify([...stock])}`);
};

const same = (stock: Stock, upTo: number): void => {
  const twin = enumerated(stock);
  const misses: number[] = [];
  for (let length = 1; length <= upTo; length++) {
    const parts = compose(stock, length);
    if ((parts === null) !== !twin.has(length) || (parts && parts.length !== twin.get(length))) misses.push(length);
    if (parts) holds(stock, length, parts);
  }
  expect(misses, JSON.stringify([...stock])).toEqual([]);
};

const randomStock = (random: () => number): Stock => {
  const sizes = [10, 15, 20, 30, 35, 40, 45, 50, 75, 100, 105];
  const stock = new Map<number, number>();
  for (let i = 0; i < 5; i++) stock.set(sizes[Math.floor(random() * sizes.length)]!, 1 + Math.floor(random() * 3));
  return stock;
};

describe('compose', () => {
  it('keeps a way that a shorter one with fewer segments would hide: 120 = 40 + 40 + 30 + 10, though 110 is best as 100 + 10', () => {
    const stock: Stock = new Map([[100, 1], [40, 2], [30, 1], [10, 1]]);
    expect(compose(stock, 120)).toEqual([40, 40, 30, 10]);
    expect(compose(stock, 110)).toEqual([100, 10]);
    expect(compose(stock, 220)).toEqual([100, 40, 40, 30, 10]);
    expect(compose(stock, 60)).toBeNull();
    expect(compose(stock, 230)).toBeNull();
  });

  it('every length of every tool in the demo rack, and no other, with the fewest segments', () => {
    const { punches, dies } = demoRack();
    const racks = new Map([...punches, ...dies].map((tool) => [JSON.stringify(tool.segments.filter((s) => !s.ear)), tool]));
    for (const tool of racks.values()) {
      const stock = plainStock(tool.segments);
      same(stock, Math.min(8000, [...stock].reduce((all, [length, count]) => all + length * count, 0) + 10));
    }
  });

  it('random small stocks (seed 41)', () => {
    const random = mulberry32(41);
    for (let round = 0; round < 60; round++) {
      const stock = randomStock(random);
      same(stock, sum([...stock].map(([length, count]) => length * count)) + 5);
    }
  });

  it('ear segments are no plain stock, and what is taken out is gone', () => {
    const stock = plainStock([
      { length: 100, count: 1, ear: { hand: 'left', reach: 20, footHeight: 30 } }, { length: 100, count: 2 }, { length: 50, count: 1 },
    ]);
    expect([...stock]).toEqual([[100, 2], [50, 1]]);
    const left = without(stock, [100, 50]);
    expect(compose(left, 100)).toEqual([100]);
    expect(compose(left, 50)).toBeNull();
    expect(compose(left, 200)).toBeNull();
  });
});

describe('lengthFor', () => {
  it('the nearest length that both make up, the longer of two as near (seed 42)', () => {
    const random = mulberry32(42);
    let [found, none] = [0, 0];
    for (let round = 0; round < 150; round++) {
      const [punch, die] = [randomStock(random), randomStock(random)];
      const least = 20 + random() * 200;
      const most = least + random() * 60;
      const wished = Math.floor(random() * 300);
      const both = [...enumerated(punch).keys()].filter((l) => l > 0 && enumerated(die).has(l) && l >= least && l <= most);
      // a wish outside is read as the nearest whole length inside
      const aim = Math.min(Math.floor(most), Math.max(Math.ceil(least), wished));
      both.sort((a, b) => Math.abs(a - aim) - Math.abs(b - aim) || b - a);
      expect(lengthFor(punch, die, least, most, wished), `round ${round}`).toBe(both[0] ?? null);
      if (both.length > 0) found++;
      else none++;
    }
    expect(Math.min(found, none)).toBeGreaterThan(20);
  });

  it('a wish between whole mm is rounded up', () => {
    const stock: Stock = new Map([[10, 1], [12, 1]]);
    expect(lengthFor(stock, stock, 5, 20, 10.6)).toBe(12); // as near to 11 as 10 is, and longer
    expect(lengthFor(stock, stock, 13, 20, 15)).toBeNull();
  });
});

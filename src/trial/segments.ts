import type { Segment } from '../shop/index.js';

/** How many of each plain segment are still in the rack, by length in mm. */
export type Stock = ReadonlyMap<number, number>;

/** One stock for one rack's list, so that what it can make up is worked out once. */
const stocks = new WeakMap<readonly Segment[], Stock>();

export const plainStock = (segments: readonly Segment[]): Stock => {
  const known = stocks.get(segments);
  if (known) return known;
  const stock = new Map<number, number>();
  for (const s of segments) if (!s.ear) stock.set(s.length, (stock.get(s.length) ?? 0) + s.count);
  stocks.set(segments, stock);
  return stock;
};

/** A bundle of equal segments that is taken whole or not at all. */
interface Bundle {
  readonly length: number;
  readonly count: number;
  /** For every whole length, 1 where the fewest segments from this bundle and those before it use this one. */
  readonly taken: Uint8Array;
}

/** A count as bundles of 1, 2, 4 ... and a rest: their sums are exactly the numbers from 0 to `count`. */
const bundled = (count: number): number[] => {
  const sizes: number[] = [];
  let left = count;
  for (let size = 1; left > 0; size *= 2) {
    sizes.push(Math.min(size, left));
    left -= size;
  }
  return sizes;
};

/** More than any number of segments. */
const NEVER = 1 << 29;

/** For every whole length up to `most` mm, which bundles make it up with the fewest segments. */
const bundlesOf = (stock: Stock, most: number): readonly Bundle[] => {
  const fewest = new Int32Array(most + 1).fill(NEVER);
  fewest[0] = 0;
  return [...stock].sort((a, b) => b[0] - a[0]).flatMap(([length, stored]) => bundled(stored).map((count) => {
    const taken = new Uint8Array(most + 1);
    const size = length * count;
    for (let at = most; at >= size; at--) {
      if (fewest[at - size]! + count >= fewest[at]!) continue;
      fewest[at] = fewest[at - size]! + count;
      taken[at] = 1;
    }
    return { length, count, taken };
  }));
};

/** No bed is longer. mm */
const LONGEST = 8000;

const kept = new WeakMap<Stock, readonly Bundle[]>();

/** The bundles of a stock, the last one first: the way back through them. */
const table = (stock: Stock): readonly Bundle[] => {
  let found = kept.get(stock);
  if (!found) {
    const all = [...stock].reduce((sum, [length, count]) => sum + length * count, 0);
    kept.set(stock, (found = [...bundlesOf(stock, Math.min(LONGEST, Math.floor(all)))].reverse()));
  }
  return found;
};

/** The fewest segments that make up exactly `length` whole mm, longest first; null when the stock cannot. */
export const compose = (stock: Stock, length: number): readonly number[] | null => {
  const parts: number[] = [];
  let at = length;
  for (const { length: piece, count, taken } of table(stock)) {
    if (taken[at] !== 1) continue;
    parts.push(...Array<number>(count).fill(piece));
    at -= piece * count;
  }
  return at === 0 ? parts.sort((a, b) => b - a) : null;
};

/**
 * The length within [least, most] nearest to `wished`, rounded up (longer before shorter), that both stocks can make up; null when there is none. Whole mm.
 * `ends` mm of the punch are made up by segments that are not in its stock.
 */
export const lengthFor = (punch: Stock, die: Stock, least: number, most: number, wished: number, ends = 0): number | null => {
  const low = Math.max(1, Math.ceil(least - 1e-6));
  const high = Math.floor(most + 1e-6);
  const aim = Math.min(high, Math.max(low, Math.ceil(wished - 1e-6)));
  for (let d = 0; d <= high - low; d++) {
    for (const length of d === 0 ? [aim] : [aim + d, aim - d]) {
      if (length >= low && length <= high && compose(punch, length - ends) && compose(die, length)) return length;
    }
  }
  return null;
};

/** What remains when `parts` are taken out. */
export const without = (stock: Stock, parts: readonly number[]): Stock => {
  const left = new Map(stock);
  for (const p of parts) left.set(p, (left.get(p) ?? 0) - 1);
  return left;
};

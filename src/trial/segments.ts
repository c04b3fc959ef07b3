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

/** For every whole length up to `most` mm, the segment added last to make it up exactly; 0 where it cannot be made. */
const lastPieces = (stock: Stock, most: number): Int32Array => {
  const pieces = new Int32Array(most + 1).fill(1 << 29);
  pieces[0] = 0;
  const last = new Int32Array(most + 1);
  for (const [length, count] of [...stock].sort((a, b) => b[0] - a[0])) {
    // how many of this length are used to reach each place, so that the count is kept
    const used = new Int32Array(most + 1);
    for (let at = length; at <= most; at++) {
      const before = at - length;
      if (pieces[before]! + 1 < pieces[at]! && used[before]! < count) {
        pieces[at] = pieces[before]! + 1;
        used[at] = used[before]! + 1;
        last[at] = length;
      }
    }
  }
  return last;
};

/** No bed is longer. mm */
const LONGEST = 8000;

const kept = new WeakMap<Stock, Int32Array>();

const table = (stock: Stock): Int32Array => {
  let found = kept.get(stock);
  if (!found) kept.set(stock, (found = lastPieces(stock, LONGEST)));
  return found;
};

/** The segments that make up exactly `length` mm, longest first; null when the stock cannot. */
export const compose = (stock: Stock, length: number): readonly number[] | null => {
  const last = table(stock);
  const parts: number[] = [];
  const left = new Map(stock);
  let at = length;
  while (at > 0) {
    const piece = last[at]!;
    if (piece === 0 || (left.get(piece) ?? 0) === 0) return null;
    left.set(piece, left.get(piece)! - 1);
    parts.push(piece);
    at -= piece;
  }
  return parts.sort((a, b) => b - a);
};

/**
 * The length within [least, most] nearest to `wished` (longer before shorter) that both stocks can make up; null when there is none. Whole mm.
 */
export const lengthFor = (punch: Stock, die: Stock, least: number, most: number, wished: number): number | null => {
  const low = Math.max(1, Math.ceil(least - 1e-6));
  const high = Math.floor(most + 1e-6);
  const aim = Math.min(high, Math.max(low, Math.ceil(wished - 1e-6)));
  for (let d = 0; d <= high - low; d++) {
    for (const length of d === 0 ? [aim] : [aim + d, aim - d]) {
      if (length >= low && length <= high && compose(punch, length) && compose(die, length)) return length;
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

import type { Segment } from '../shop/index.js';
import type { Ears } from './ears.js';

/** The ear segments that stand at a punch's ends: the rack's segments and their lengths. mm */
export interface EndPieces {
  readonly left: number;
  readonly right: number;
  readonly taken: readonly [Segment, Segment];
}

/** How many of each ear segment are still in the rack. */
export type EarStock = ReadonlyMap<Segment, number>;

export const freshEars = (segments: readonly Segment[]): EarStock =>
  new Map(segments.filter((s) => s.ear).map((s) => [s, s.count]));

/** Every left and right ear that is still there, the shortest pair first. */
export const endPieces = (ears: Ears, stock: EarStock): readonly EndPieces[] =>
  ears.left
    .flatMap((l) => ears.right.map((r): EndPieces => ({ left: l.length, right: r.length, taken: [l, r] })))
    .filter(({ taken }) => taken.every((s) => (stock.get(s) ?? 0) > 0))
    .sort((a, b) => a.left + a.right - b.left - b.right);

export const withoutEnds = (stock: EarStock, { taken }: EndPieces): EarStock => {
  const left = new Map(stock);
  for (const s of taken) left.set(s, left.get(s)! - 1);
  return left;
};

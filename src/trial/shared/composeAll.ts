import type { Pair } from '../bodies.js';
import { type EarStock, type EndPieces, endPieces, freshEars, withoutEnds } from '../earStock.js';
import { type Stock, compose, plainStock, without } from '../segments.js';

/** What stands in one station: ear segments at the punch's ends (null: none), plain segments between, the die's. mm */
export interface Segments {
  readonly ends: EndPieces | null;
  readonly punchParts: readonly number[];
  readonly dieParts: readonly number[];
}

interface Asked {
  readonly pair: Pair;
  /** mm, whole */
  readonly length: number;
}

const endsOf = ({ ears }: Pair, stock: EarStock): readonly (EndPieces | null)[] => (ears ? endPieces(ears, stock) : [null]);
const lengthOf = (ends: EndPieces | null): number => (ends ? ends.left + ends.right : 0);

/** Can a station of this pair be `length` whole mm long, with the rack to itself? */
export const lengthFits = ({ pair, length }: Asked): boolean =>
  compose(plainStock(pair.die.segments), length) !== null &&
  endsOf(pair, freshEars(pair.punch.segments)).some((ends) => compose(plainStock(pair.punch.segments), length - lengthOf(ends)) !== null);

/** Ways of making up a length that are tried for all stations of one tool together. */
const MOST_TRIED = 20_000;

/** Every way to make up `length` out of `sizes` from the k-th on, long segments first. */
function* waysToMake(stock: Stock, sizes: readonly number[], k: number, length: number): Generator<readonly number[]> {
  if (length === 0) yield [];
  const size = sizes[k];
  if (length <= 0 || size === undefined) return;
  for (let count = Math.min(stock.get(size) ?? 0, Math.floor(length / size)); count >= 0; count--) {
    for (const rest of waysToMake(stock, sizes, k + 1, length - count * size)) yield [...Array<number>(count).fill(size), ...rest];
  }
}

interface Row {
  readonly lengths: readonly number[];
  readonly pieces: (k: number, ears: EarStock) => readonly (EndPieces | null)[];
}

interface Made {
  readonly ends: EndPieces | null;
  readonly parts: readonly number[];
}

/** All rows of one tool out of one stock: the fewest segments one after another, and every other way where that fails. */
const together = ({ lengths, pieces }: Row, fresh: Stock, freshEar: EarStock, onGivenUp: () => void): readonly Made[] | null => {
  let tried = 0;
  const go = (k: number, stock: Stock, ears: EarStock, every: boolean): readonly Made[] | null => {
    if (k === lengths.length) return [];
    const sizes = [...stock.keys()].sort((a, b) => b - a);
    for (const ends of pieces(k, ears)) {
      const length = lengths[k]! - lengthOf(ends);
      const few = compose(stock, length);
      if (!few) continue;
      for (const parts of every ? waysToMake(stock, sizes, 0, length) : [few]) {
        if (tried++ > MOST_TRIED) {
          onGivenUp();
          return null;
        }
        const rest = go(k + 1, without(stock, parts), ends ? withoutEnds(ears, ends) : ears, every);
        if (rest) return [{ ends, parts }, ...rest];
      }
    }
    return null;
  };
  return go(0, fresh, freshEar, false) ?? go(0, fresh, freshEar, true);
};

/** Segments for all stations at once from what the rack holds; null where they do not suffice, or (told) where that was not found out. */
export const composeAll = (stations: readonly Asked[], onGivenUp: () => void): readonly Segments[] | null => {
  const rows = (of: 'punch' | 'die'): readonly Made[] | null => {
    const made: Made[] = [];
    for (const id of new Set(stations.map(({ pair }) => pair[of].id))) {
      const here = stations.flatMap(({ pair }, i) => (pair[of].id === id ? [i] : []));
      const { segments } = stations[here[0]!]!.pair[of];
      const found = together({
        lengths: here.map((i) => stations[i]!.length),
        pieces: (k, ears) => (of === 'punch' ? endsOf(stations[here[k]!]!.pair, ears) : [null]),
      }, plainStock(segments), freshEars(segments), onGivenUp);
      if (!found) return null;
      here.forEach((i, k) => (made[i] = found[k]!));
    }
    return made;
  };
  const punches = rows('punch');
  const dies = punches && rows('die');
  return dies && punches.map(({ ends, parts }, i) => ({ ends, punchParts: parts, dieParts: dies[i]!.parts }));
};

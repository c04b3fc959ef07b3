import type { UnitWay } from '../../src/trial/shared/merging.js';
import { type RowProblem, standApart } from './rowProblem.js';

const permutations = <T>(items: readonly T[]): T[][] =>
  items.length <= 1 ? [[...items]] : items.flatMap((it, i) => permutations(items.filter((_, k) => k !== i)).map((rest) => [it, ...rest]));

/** Every way to put things into heaps. */
const heaps = <T>(items: readonly T[]): T[][][] => {
  const [first, ...rest] = items;
  if (first === undefined) return [[]];
  return heaps(rest).flatMap((of) => [[[first], ...of], ...of.map((_, i) => of.map((heap, k) => (k === i ? [first, ...heap] : heap)))]);
};

const product = <T>(of: readonly (readonly T[])[]): T[][] => of.reduce<T[][]>((all, list) => all.flatMap((done) => list.map((one) => [...done, one])), [[]]);

interface Row {
  readonly ways: readonly UnitWay[];
  readonly from: number;
  readonly to: number;
}

/** Is there a place for every stroke with the row as it stands? Looked at in the plainest words. */
const stands = (row: readonly Row[], { bed }: RowProblem): boolean => row.every(({ ways, from, to }, k) => {
  if (ways.some((w) => w.endOnly) && k > 0 && k < row.length - 1) return false;
  return ways.flatMap((w) => w.uses).every(({ need, window, metal, place }) => {
    let [low, high]: [number, number] = [place[0], place[1]];
    const atLeast = (v: number): void => void (low = Math.max(low, v));
    const atMost = (v: number): void => void (high = Math.min(high, v));
    atLeast(from - need[0]);
    atMost(to - need[1]);
    atMost(from - window[0]);
    atLeast(to - window[1]);
    row.forEach((other, j) => {
      if (j < k) atLeast(other.to + bed.beside - metal[0]);
      if (j > k) atMost(other.from - bed.beside - metal[1]);
    });
    return low <= high;
  });
});

/** The least length by looking at every choice, sharing, order, length and whole millimetre; null where nothing stands. */
export const everyRow = (problem: RowProblem): number | null => {
  const { bed, parts, lengths, most } = problem;
  const half = bed.length / 2;
  let best: number | null = null;
  const place = (order: readonly (readonly UnitWay[])[], long: readonly number[], row: readonly Row[]): void => {
    const k = row.length;
    if (k === order.length) {
      const span = row[k - 1]!.to - row[0]!.from;
      if ((best === null || span < best) && stands(row, problem)) best = span;
      return;
    }
    const rest = long.slice(k).reduce((sum, l) => sum + l, (order.length - k - 1) * bed.between);
    const first = k === 0 ? -half : row[k - 1]!.to + bed.between;
    // no further than what is left still fits, nor than the best known
    const last = Math.min(half - rest, best === null || k === 0 ? Infinity : row[0]!.from + best - 1 - rest);
    for (let from = first; from <= last; from++) place(order, long, [...row, { ways: order[k]!, from, to: from + long[k]! }]);
  };
  for (const plans of product(parts)) {
    for (const ways of product(plans.flatMap(({ stations }) => stations))) {
      for (const shared of heaps(ways)) {
        if (shared.some((heap) => new Set(heap.map(({ kind }) => kind)).size > 1)) continue;
        if (shared.some((a) => shared.some((b) => standApart(problem, a[0]!.kind, b[0]!.kind)))) continue;
        for (const order of permutations(shared)) {
          for (const long of product(order.map((heap) => lengths[heap[0]!.kind]!))) {
            const used = new Map<string, number>();
            order.forEach((heap, k) => used.set(heap[0]!.kind, (used.get(heap[0]!.kind) ?? 0) + long[k]!));
            if ([...used].every(([kind, sum]) => sum <= most[kind]!)) place(order, long, []);
          }
        }
      }
    }
  }
  return best;
};

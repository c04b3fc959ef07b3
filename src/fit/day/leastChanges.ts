/** What a change costs, weighed in this order: how many tools are handled, then the seconds that it takes. */
export interface ChangeCost {
  readonly changes: number;
  readonly seconds: number;
}

export interface BestOrder extends ChangeCost {
  readonly order: readonly number[];
}

/** Parts of one day beyond which the table of subsets grows out of hand (16 parts: a million entries). */
export const MOST_PARTS = 16;

const less = (a: ChangeCost, b: ChangeCost): boolean => a.changes < b.changes || (a.changes === b.changes && a.seconds < b.seconds);

/**
 * The order of `count` parts with the least changes from an empty bed to the last: exact, by the best way to have made each subset
 * with each part last. `cost(null, b)` is the first set-up. Of equal orders the one that begins with the lower numbers.
 *
 * @example leastChanges(2, (a, b) => ({ changes: a === null ? b + 1 : 1, seconds: 0 })).order // [0, 1]
 */
export const leastChanges = (count: number, cost: (from: number | null, to: number) => ChangeCost): BestOrder => {
  if (count > MOST_PARTS) throw new Error(`an order of ${count} parts was asked for; ${MOST_PARTS} are the most`);
  if (count === 0) return { order: [], changes: 0, seconds: 0 };
  const between = Array.from({ length: count }, (_, a) => Array.from({ length: count }, (__, b) => (a === b ? null : cost(a, b))));
  const all = (1 << count) - 1;
  // best[set][k]: of the parts in `set`, all made from k on to the end; built from the end, so that ties fall to the first of the order
  const best: (BestOrder | null)[][] = Array.from({ length: all + 1 }, () => Array.from({ length: count }, () => null));
  for (let set = 1; set <= all; set++) {
    for (let first = 0; first < count; first++) {
      if ((set & (1 << first)) === 0) continue;
      const rest = set & ~(1 << first);
      if (rest === 0) {
        best[set]![first] = { order: [first], changes: 0, seconds: 0 };
        continue;
      }
      let found: BestOrder | null = null;
      for (let next = 0; next < count; next++) {
        const then = (rest & (1 << next)) === 0 ? null : best[rest]![next]!;
        if (then === null) continue;
        const change = between[first]![next]!;
        const here = { changes: change.changes + then.changes, seconds: change.seconds + then.seconds };
        if (found === null || less(here, found)) found = { ...here, order: [first, ...then.order] };
      }
      best[set]![first] = found;
    }
  }
  return Array.from({ length: count }, (_, first): BestOrder => {
    const start = cost(null, first);
    const then = best[all]![first]!;
    return { order: then.order, changes: start.changes + then.changes, seconds: start.seconds + then.seconds };
  }).reduce((a, b) => (less(b, a) ? b : a));
};

/** What a change costs, weighed in this order: how many tools are handled, then the seconds that it takes. */
export interface ChangeCost {
  readonly changes: number;
  readonly seconds: number;
}

export interface BestOrder extends ChangeCost {
  readonly order: readonly number[];
}

/** Parts of one day beyond which the table of subsets grows out of hand (16 parts: a million entries of 17 bytes). */
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
  // at set * count + first: of the parts in `set`, all made from `first` on to the end, what that costs and which comes second (-1: none);
  // built from the end, so that ties fall to the first of the order
  const size = (all + 1) * count;
  const [changes, seconds, second] = [new Float64Array(size), new Float64Array(size), new Int8Array(size)];
  for (let set = 1; set <= all; set++) {
    for (let first = 0; first < count; first++) {
      if ((set & (1 << first)) === 0) continue;
      const rest = set & ~(1 << first);
      let found: ChangeCost = { changes: rest === 0 ? 0 : Infinity, seconds: 0 };
      let then = -1;
      for (let next = 0; next < count; next++) {
        if ((rest & (1 << next)) === 0) continue;
        const change = between[first]![next]!;
        const at = rest * count + next;
        const here = { changes: change.changes + changes[at]!, seconds: change.seconds + seconds[at]! };
        if (less(here, found)) [found, then] = [here, next];
      }
      const at = set * count + first;
      changes[at] = found.changes;
      seconds[at] = found.seconds;
      second[at] = then;
    }
  }
  const [start, first] = Array.from({ length: count }, (_, k): readonly [ChangeCost, number] => {
    const begun = cost(null, k);
    return [{ changes: begun.changes + changes[all * count + k]!, seconds: begun.seconds + seconds[all * count + k]! }, k];
  }).reduce((a, b) => (less(b[0], a[0]) ? b : a));
  const order: number[] = [];
  for (let [set, k] = [all, first]; k >= 0;) {
    order.push(k);
    [set, k] = [set & ~(1 << k), second[set * count + k]!];
  }
  return { order, ...start };
};

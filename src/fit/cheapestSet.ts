/** One way to make a part: all of these items together. Names of things to be had; none at all where nothing is needed. */
export type Way = readonly string[];

export interface CheapestSet {
  readonly chosen: readonly string[];
  readonly price: number;
  /** No set costs less than this; equal to `price` when `proven`. */
  readonly bound: number;
  readonly proven: boolean;
  /** Indices of the parts that no way makes: left out of the sum. */
  readonly cannot: readonly number[];
}

/** Nodes after which the best so far is told with its gap. */
const MOST_NODES = 300_000;

const within = (way: Way, chosen: ReadonlySet<string>): boolean => way.every((item) => chosen.has(item));

/** Ways that hold no other way of the same part: more than enough is never cheaper. */
const withoutDominated = (ways: readonly Way[]): readonly Way[] => {
  const unique = [...new Map(ways.map((w) => [[...new Set(w)].sort().join('\n'), [...new Set(w)]])).values()];
  return unique.filter((w) => !unique.some((other) => other !== w && other.length < w.length && other.every((i) => w.includes(i))));
};

/**
 * The cheapest things that together make every part that can be made at all: each part needs one of its ways whole, and a thing is paid
 * for once. Exact by branch and bound on the part with the fewest ways left; the bound of a branch is the dearest of what the
 * parts still missing would each cost at the least. An item without a price in `priceOf` makes its ways unusable.
 *
 * @example cheapestSet([[['a'], ['b']], [['b', 'c']]], new Map([['a', 1], ['b', 2], ['c', 1]])).price // 3: b and c
 */
export const cheapestSet = (parts: readonly (readonly Way[])[], priceOf: ReadonlyMap<string, number>, mostNodes = MOST_NODES): CheapestSet => {
  const usable = parts.map((ways) => withoutDominated(ways.filter((w) => w.every((item) => priceOf.has(item)))));
  const cannot = usable.flatMap((ways, i) => (ways.length === 0 ? [i] : []));
  const distinct = new Map(usable.filter((ways) => ways.length > 0).map((ways) => [JSON.stringify(ways.map((w) => [...w].sort()).sort()), ways]));
  const open = [...distinct.values()];
  let best: { readonly chosen: readonly string[]; readonly price: number } | null = null;
  let nodes = 0;
  let cut = false;
  const extra = (way: Way, chosen: ReadonlySet<string>): number => way.reduce((sum, item) => sum + (chosen.has(item) ? 0 : priceOf.get(item)!), 0);
  const atLeast = (left: readonly (readonly Way[])[], chosen: ReadonlySet<string>): number =>
    left.reduce((most, ways) => Math.max(most, Math.min(...ways.map((w) => extra(w, chosen)))), 0);
  const root = atLeast(open, new Set());

  const branch = (chosen: ReadonlySet<string>, price: number, left: readonly (readonly Way[])[]): void => {
    const missing = left.filter((ways) => !ways.some((w) => within(w, chosen)));
    if (missing.length === 0) {
      if (best === null || price < best.price) best = { chosen: [...chosen], price };
      return;
    }
    if (nodes++ >= mostNodes && best !== null) {
      cut = true;
      return;
    }
    if (best !== null && price + atLeast(missing, chosen) >= best.price) return;
    const next = missing.reduce((few, ways) => (ways.length < few.length ? ways : few));
    for (const way of [...next].sort((a, b) => extra(a, chosen) - extra(b, chosen))) {
      branch(new Set([...chosen, ...way]), price + extra(way, chosen), missing.filter((ways) => ways !== next));
    }
  };
  branch(new Set(), 0, open);
  const found = best as { readonly chosen: readonly string[]; readonly price: number } | null;
  const price = found?.price ?? 0;
  return { chosen: [...(found?.chosen ?? [])].sort(), price, bound: cut ? Math.min(root, price) : price, proven: !cut, cannot };
};

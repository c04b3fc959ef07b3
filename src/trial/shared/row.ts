import type { Interval } from '../../geometry/index.js';

/** The bed that a row of stations stands on, and the room that is kept. mm, whole */
export interface Bed {
  readonly length: number;
  /** Between the tools of two neighbours. */
  readonly between: number;
  /** Between a sheet at its station and any tool of another. */
  readonly beside: number;
}

/** One stroke as a row of stations sees it: mm along from the bend's own origin. */
export interface RowUse {
  /** The tools must cover this ... */
  readonly need: Interval;
  /** ... and end within this. */
  readonly window: Interval;
  /** From where to where the sheet and the fingers reach. */
  readonly metal: Interval;
  /** Where along the bed the origin may lie, for the side frames', the cylinders' and the fingers' Z's sakes. */
  readonly place: Interval;
}

/** A station of yet unknown place: its length lies between two whole numbers. */
export interface RowStation {
  readonly least: number;
  readonly most: number;
  readonly uses: readonly RowUse[];
  /** A part leaves it sideways: nothing may stand on one side. */
  readonly endOnly: boolean;
}

/** Whole mm along the bed: where each station stands; where the bend's origin of each of its uses may lie. */
export interface Standing {
  readonly froms: readonly number[];
  readonly lengths: readonly number[];
  readonly origins: readonly (readonly Interval[])[];
}

/** Sums of mm in another order differ by less. */
const ROUNDING = 1e-6;

/** `node + by`, as a bound on where a bend's origin lies. */
interface Bound {
  readonly node: number;
  readonly by: number;
}

/** Node 0 is the bed's middle, then the left and right end of each station. */
const left = (k: number): number => 1 + 2 * k;
const right = (k: number): number => 2 + 2 * k;

const finite = ({ by }: Bound): boolean => Number.isFinite(by);

/** Bounds from below and above on the origin of a use of station `k` in a row of `count`. */
const boundsOf = (use: RowUse, k: number, count: number, { beside }: Bed): { readonly low: readonly Bound[]; readonly high: readonly Bound[] } => {
  const others = Array.from({ length: count }, (_, i) => i);
  return {
    low: [
      { node: left(k), by: -use.need[0] }, { node: right(k), by: -use.window[1] }, { node: 0, by: use.place[0] },
      ...others.filter((i) => i < k).map((i) => ({ node: right(i), by: beside - use.metal[0] })),
    ].filter(finite),
    high: [
      { node: right(k), by: -use.need[1] }, { node: left(k), by: -use.window[0] }, { node: 0, by: use.place[1] },
      ...others.filter((i) => i > k).map((i) => ({ node: left(i), by: -beside - use.metal[1] })),
    ].filter(finite),
  };
};

/** `least[u][v]`: node v lies at least so far to the right of node u; null where that cannot be. */
const closed = (least: number[][]): number[][] | null => {
  const n = least.length;
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) {
      const ik = least[i]![k]!;
      if (ik === -Infinity) continue;
      for (let j = 0; j < n; j++) {
        const by = ik + least[k]![j]!;
        if (by > least[i]![j]!) least[i]![j] = by;
      }
    }
    if (least.some((row, i) => row[i]! > 0)) return null;
  }
  return least;
};

/** Every wish of a row, left to right, as differences of places: each at least a whole number. */
const differences = (row: readonly RowStation[], bed: Bed): number[][] | null => {
  const n = 1 + 2 * row.length;
  const least = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (__, j) => (i === j ? 0 : -Infinity)));
  let possible = true;
  const apart = (u: number, v: number, by: number): void => {
    const whole = Math.ceil(by - ROUNDING);
    if (u === v && whole > 0) possible = false;
    if (whole > least[u]![v]!) least[u]![v] = whole;
  };
  row.forEach((station, k) => {
    apart(left(k), right(k), station.least);
    apart(right(k), left(k), -station.most);
    if (k > 0) apart(right(k - 1), left(k), bed.between);
    apart(0, left(k), -bed.length / 2);
    apart(right(k), 0, -bed.length / 2);
    for (const use of station.uses) {
      const { low, high } = boundsOf(use, k, row.length, bed);
      for (const l of low) for (const h of high) apart(l.node, h.node, l.by - h.by);
    }
  });
  return possible ? closed(least) : null;
};

/**
 * The least length of bed, outer edge to outer edge, on which this row can stand in this order; null where it cannot at all. Every
 * wish says that one place lies at least so far to the right of another, so the longest chain of them is the answer, exactly.
 */
export const spanOf = (row: readonly RowStation[], bed: Bed): number | null => differences(row, bed)?.[left(0)]![right(row.length - 1)] ?? null;

/** The row on that least length, as near the middle of the bed as its wishes let it. */
export const stand = (row: readonly RowStation[], bed: Bed): Standing | null => {
  const free = differences(row, bed);
  if (!free) return null;
  const [first, last] = [left(0), right(row.length - 1)];
  const span = free[first]![last]!;
  free[last]![first] = Math.max(free[last]![first]!, -span);
  const tight = closed(free);
  if (!tight) return null;
  const wished = -Math.floor(span / 2);
  const at = Math.min(-tight[first]![0]!, Math.max(tight[0]![first]!, wished));
  tight[0]![first] = Math.max(tight[0]![first]!, at);
  tight[first]![0] = Math.max(tight[first]![0]!, -at);
  const set = closed(tight);
  if (!set) return null;
  // the furthest left that each end may lie is a choice that suits all wishes at once
  const place = (node: number): number => set[0]![node]!;
  const origins = row.map(({ uses }, k) => uses.map((use): Interval => {
    const { low, high } = boundsOf(use, k, row.length, bed);
    const at = ({ node, by }: Bound): number => place(node) + by;
    return [Math.max(...low.map(at)), Math.min(...high.map(at))];
  }));
  return { froms: row.map((_, k) => place(left(k))), lengths: row.map((_, k) => place(right(k)) - place(left(k))), origins };
};

/** A closed interval on a line, mm. */
export type Interval = readonly [number, number];
/** Disjoint intervals in rising order. */
export type Intervals = readonly Interval[];

/** The union of any intervals, in normal form. Empty and reversed ones are dropped. */
export const union = (parts: readonly Interval[]): Intervals => {
  const sorted = parts.filter(([a, b]) => b >= a).sort((p, q) => p[0] - q[0]);
  const merged: [number, number][] = [];
  for (const [a, b] of sorted) {
    const last = merged[merged.length - 1];
    if (last && a <= last[1]) last[1] = Math.max(last[1], b);
    else merged.push([a, b]);
  }
  return merged;
};

/** Do `set` and [a, b] share more than their ends? */
export const meets = (set: Intervals, [a, b]: Interval): boolean => set.some(([c, d]) => c < b && a < d);

/** Does one interval of `set` hold all of [a, b]? */
export const covers = (set: Intervals, [a, b]: Interval): boolean => set.some(([c, d]) => c <= a && b <= d);

/**
 * The widest open window about [a, b] that `set` leaves free; null when [a, b] itself is not free. The ends are
 * -Infinity and Infinity where nothing stands.
 */
export const windowAbout = (set: Intervals, [a, b]: Interval): Interval | null => {
  let [lo, hi] = [-Infinity, Infinity];
  for (const [c, d] of set) {
    if (c < b && a < d) return null;
    if (d <= a) lo = Math.max(lo, d);
    else hi = Math.min(hi, c);
  }
  return [lo, hi];
};

/** The same intervals read in the other direction: x becomes -x. */
export const mirrored = (set: Intervals): Intervals => set.map(([a, b]) => [-b, -a] as const).reverse();

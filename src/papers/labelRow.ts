/**
 * Middles of labels that stand side by side in one row between `from` and `to`, in the order of their wishes (left to right) and `gap`
 * apart at least: the places with the least sum of squared distances from the wishes. Null where they do not fit. All in mm of paper.
 *
 * @example labelRow([10, 10], [6, 6], 0, 20, 2) // [6, 14]
 */
export const labelRow = (wishes: readonly number[], widths: readonly number[], from: number, to: number, gap: number): readonly number[] | null => {
  // how far each middle stands right of the first when they stand as close as they may
  const offsets = widths.map((_, i) => widths.slice(0, i).reduce((sum, w, k) => sum + (w + widths[k + 1]!) / 2 + gap, 0));
  const [low, high] = [from + (widths[0] ?? 0) / 2, to - (widths.at(-1) ?? 0) / 2 - (offsets.at(-1) ?? 0)];
  if (low > high + 1e-9) return null;
  // pool adjacent violators: less its offset, no wish may stand left of the one before it
  const pools: { sum: number; count: number }[] = [];
  wishes.forEach((wish, i) => {
    let pool = { sum: wish - offsets[i]!, count: 1 };
    for (let last = pools.at(-1); last && last.sum / last.count > pool.sum / pool.count; last = pools.at(-1)) {
      pool = { sum: last.sum + pool.sum, count: last.count + pool.count };
      pools.pop();
    }
    pools.push(pool);
  });
  return pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => Math.min(high, Math.max(low, sum / count)))).map((z, i) => z + offsets[i]!);
};

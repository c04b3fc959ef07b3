import type { ColumnSum } from '../../fit/index.js';

/** Columns (indices) in the order of every table of a board: by the parts made as it stands, then by those made with more and more changes; of the same the one given first. */
export const mostFirst = (sums: readonly Pick<ColumnSum, 'levels'>[]): readonly number[] =>
  sums.map((_, c) => c).sort((a, b) => sums[a]!.levels.reduce((before, { made }, k) => before || sums[b]!.levels[k]!.made - made, 0));

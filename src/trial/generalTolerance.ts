/**
 * General tolerance of a length, class m: plus or minus mm. ISO 2768-1:1989, table 1, as seen in a printed copy.
 * Under 0.5 mm and over 4,000 mm the table says nothing: the nearest row is taken.
 */
export const generalTolerance = (length: number): number => {
  const rows = [[6, 0.1], [30, 0.2], [120, 0.3], [400, 0.5], [1000, 0.8], [2000, 1.2]] as const;
  return rows.find(([to]) => length <= to)?.[1] ?? 2;
};

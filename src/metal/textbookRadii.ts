/**
 * Kalpakjian and Schmid, Manufacturing Engineering and Technology, SI 6th ed. 2009, table 16.3: least inside radius over
 * thickness at room temperature, soft and hard.
 */
export const TEXTBOOK_RADII = {
  'aluminium alloys': [0, 6],
  'beryllium copper': [0, 4],
  'low-leaded brass': [0, 2],
  magnesium: [5, 13],
  'austenitic stainless': [0.5, 6],
  'low-carbon, low-alloy and HSLA steel': [0.5, 4],
  titanium: [0.7, 3],
  'titanium alloys': [2.6, 4],
} as const satisfies Readonly<Record<string, readonly [number, number]>>;

/** The same book's eq. 16.5: least inside radius over thickness from a tensile test's reduction of area, percent (R = T (50/r - 1)). */
export const radiusFromReduction = (reductionOfArea: number): number => Math.max(0, 50 / reductionOfArea - 1);

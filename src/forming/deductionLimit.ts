/** mm, and share of the thickness: a deduction further off the calculated one than both is a slip in measuring or typing, not a metal. Common practice, no source. */
const LEAST = 1;
const SHARE = 0.5;

/** mm by which a measured deduction may differ from the calculated one and still be believed; `thickness` in mm. */
export const deductionLimit = (thickness: number): number => Math.max(LEAST, SHARE * thickness);

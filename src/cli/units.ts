const MM_PER_INCH = 25.4;

/** Shows lengths in the user's unit. Everything stays in mm inside and in JSON. */
export interface Show {
  readonly unit: 'mm' | 'in';
  /** A length with its unit: '12.50 mm', '0.492 in'. */
  readonly length: (mm: number, decimals?: number) => string;
  /** The number alone. */
  readonly bare: (mm: number, decimals?: number) => string;
  /** Two or more lengths with the unit once. */
  readonly lengths: (mm: readonly number[], decimals?: number) => string;
}

/** `decimals` are those of millimetres; inches get one more, being 25 times as coarse. */
export const show = (unit: 'mm' | 'in' = 'mm'): Show => {
  const bare = (mm: number, decimals = 2): string =>
    unit === 'mm' ? mm.toFixed(decimals) : (mm / MM_PER_INCH).toFixed(decimals + 1);
  return {
    unit,
    bare,
    length: (mm, decimals) => `${bare(mm, decimals)} ${unit}`,
    lengths: (mm, decimals) => `${mm.map((x) => bare(x, decimals)).join(' x ')} ${unit}`,
  };
};

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
  /** Words of ours that name lengths in mm, with these in the user's unit. */
  readonly words: (sentence: string) => string;
}

/**
 * A length in a sentence, or several before one unit: '1,000 mm', '40 x 60 mm', '200 by 150 mm', '-5.00 to 8 mm', 'between 4 and 16 mm'; with it
 * a tolerance that has no unit of its own, '30.00 mm ± 0.50'. No rate or area, no figure that belongs to a name.
 */
const IN_WORDS = /(?<![\w.,])-?\d[\d,]*(?:\.\d+)?(?:(?: x | by | to |(?<=\bbetween [\d.,]+) and )-?\d[\d,]*(?:\.\d+)?)* mm(?![\w/]|2)(?: ± \d+(?:\.\d+)?(?![\d.]*\d| mm))?/g;

const inInches = (sentence: string): string => sentence.replaceAll(IN_WORDS, (lengths) =>
  lengths.replace(' mm', ' in').replaceAll(/\d[\d,]*(?:\.\d+)?/g, (figure) => {
    const decimals = figure.split('.')[1]?.length ?? 0;
    return (Number(figure.replaceAll(',', '')) / MM_PER_INCH).toFixed(Math.max(2, decimals + 1));
  }));

/** `decimals` are those of millimetres; inches get one more, being 25 times as coarse. */
export const show = (unit: 'mm' | 'in' = 'mm'): Show => {
  const bare = (mm: number, decimals = 2): string =>
    unit === 'mm' ? mm.toFixed(decimals) : (mm / MM_PER_INCH).toFixed(decimals + 1);
  return {
    unit,
    bare,
    words: unit === 'mm' ? (sentence) => sentence : inInches,
    length: (mm, decimals) => `${bare(mm, decimals)} ${unit}`,
    lengths: (mm, decimals) => `${mm.map((x) => bare(x, decimals)).join(' x ')} ${unit}`,
  };
};

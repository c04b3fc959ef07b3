/** A comma before three figures: thousands to one reader, decimals to another. */
const TWO_READINGS = /^[+-]?[1-9]\d*(?:,\d{3})+$/;
const FIGURE = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;

const bare = (text: string): string => text.replaceAll(/[\s\u2009\u00a0]/g, '').replace('\u2212', '-');

/** A figure typed with a point or a comma; the text as it stands where it is none or may mean two things. */
export const figureTyped = (text: string): number | string => {
  const typed = bare(text);
  const plain = typed.replace(',', '.');
  return TWO_READINGS.test(typed) || !FIGURE.test(plain) ? text : Number(plain);
};

/** A figure in another unit, without the dust of the multiplication; words stay words. */
export const inUnit = (typed: number | string, per: number): number | string => (typeof typed === 'number' ? Number((typed * per).toPrecision(12)) : typed);

/** What is said beside a figure that may mean two things. */
export const twoReadings = (value: unknown): string | undefined => {
  if (typeof value !== 'string' || !TWO_READINGS.test(bare(value))) return undefined;
  const typed = bare(value);
  return `${typed} may mean ${typed.replaceAll(',', '')} or, with a decimal comma, ${typed.replace(',', '.')}: write the one that is meant, without a comma.`;
};

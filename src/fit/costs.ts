import type { RemedyItem } from '../trial/index.js';
import { money } from './money.js';

/** What is to be paid in one currency. */
export interface Cost {
  readonly price: number;
  /** Absent where it was not kept. */
  readonly currency?: string;
}

/** What things cost together, a sum for each currency, since nothing is converted; none for what costs nothing, null where a price is not entered. */
export const costsOf = (items: readonly Pick<RemedyItem, 'price' | 'currency'>[]): readonly Cost[] | null => {
  if (items.some(({ price }) => price === null)) return null;
  const sums = new Map<string | undefined, number>();
  for (const { price, currency } of items) if (price !== null && price > 0) sums.set(currency, (sums.get(currency) ?? 0) + price);
  return [...sums].map(([currency, price]) => ({ price, ...(currency !== undefined && { currency }) }));
};

/** '' for nothing to pay. @example costWords([{ price: 9500, currency: 'EUR' }, { price: 4800, currency: 'USD' }]) // '9,500 EUR + 4,800 USD' */
export const costWords = (costs: readonly Cost[] | null): string =>
  costs === null ? 'price not entered' : costs.map(({ price, currency }) => money(price, currency ?? '').trim()).join(' + ');

/** What several things cost together, in words; '' for one alone, whose sentence tells it, and where nothing is to pay or a price is not entered. */
export const costInAll = (items: readonly Pick<RemedyItem, 'price' | 'currency'>[] = []): string => {
  const costs = items.length > 1 ? costsOf(items) : null;
  return costs === null ? '' : costWords(costs);
};

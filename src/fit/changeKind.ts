import type { Remedy, RemedyItem } from '../trial/index.js';
import { type Cost, costsOf } from './costs.js';

/**
 * What a change asks for. `as drawn`: the drawing stays; options and tools are bought, or a bend is made in two passes. `other drawing`: a coarser
 * class, another radius, a relief, a line scribed by eye; the buyer must agree. `in two`: two parts, joined. `other machine`: this one would have to be another.
 */
export const CHANGE_KINDS = ['as drawn', 'other drawing', 'in two', 'other machine'] as const;
export type ChangeKind = (typeof CHANGE_KINDS)[number];

const KIND_OF: Readonly<Record<RemedyItem['kind'], ChangeKind>> = {
  option: 'as drawn', punch: 'as drawn', die: 'as drawn', adapter: 'as drawn', 'two passes': 'as drawn',
  tolerance: 'other drawing', radius: 'other drawing', relief: 'other drawing', 'scribed line': 'other drawing', split: 'in two', daylight: 'other machine',
};

const rank = (kind: ChangeKind): number => CHANGE_KINDS.indexOf(kind);

/** Of a remedy of several items, what asks most. */
export const changeKind = ({ items = [] }: Pick<Remedy, 'items'>): ChangeKind =>
  items.map(({ kind }) => KIND_OF[kind]).reduce<ChangeKind>((most, kind) => (rank(kind) > rank(most) ? kind : most), 'as drawn');

/** Those that leave the drawing as it is first, of one kind the cheapest; without a price last. */
export const byChangeKind = (a: Remedy, b: Remedy): number =>
  rank(changeKind(a)) - rank(changeKind(b)) || (a.price ?? Infinity) - (b.price ?? Infinity) || 0;

/** Is it to be paid for? Everything else is for the buyer to say, or ours to do. */
export const isBought = ({ kind }: RemedyItem): boolean => KIND_OF[kind] === 'as drawn' && kind !== 'two passes';

/** What is to be bought of a change: none for nothing, null where a price is not entered; joining, and another machine, are not bought. */
export const costOfBought = ({ items = [] }: Pick<Remedy, 'items'>): readonly Cost[] | null => costsOf(items.filter(isBought));

/** As the end of a line that names a change: what is asked beside its price. */
export const changeTerms: Readonly<Record<ChangeKind, string>> = {
  'as drawn': '', 'other drawing': 'if the drawing allows it', 'in two': 'as two parts, if the drawing allows it; joining is not planned and has no price', 'other machine': 'another machine than this, price not known',
};

import { type ChangeKind, changeKind, isBought } from './changeKind.js';
import type { FitCell } from './fitCell.js';

/** A change's sign and word, as they stand in a cell; `says`: what they mean, for the legend. */
export interface ChangeSign {
  readonly sign: string;
  readonly word: string;
  readonly says: string;
}

/** By what a change asks for; a bend in two passes asks for nothing to buy. In the order of what they ask, the least first. */
export const CHANGE_SIGNS: Readonly<Record<'two passes' | ChangeKind, ChangeSign>> = {
  'two passes': { sign: '2×', word: 'in two passes', says: 'with a bend made in two passes, nothing to buy' },
  'as drawn': { sign: '+', word: 'with a purchase', says: 'with an option or a tool to buy' },
  'other drawing': { sign: '≈', word: 'other drawing', says: 'only if the drawing is changed as named' },
  'in two': { sign: '÷', word: 'made in two', says: 'only as two parts that are joined' },
  'other machine': { sign: '≠', word: 'other machine', says: 'only if it were another machine, as named' },
};

/** Of the change that asks least of a cell: what it asks most, and a purchase where it asks that too; none where nothing lifts its no. */
export const changeSigns = ({ verdict, remedies }: Pick<FitCell, 'verdict' | 'remedies'>): readonly ChangeSign[] => {
  const first = verdict === 'makes with remedy' ? remedies.find(({ confirmed }) => confirmed) : undefined;
  if (!first) return [];
  const [kind, bought] = [changeKind(first), first.items?.some(isBought) === true];
  if (kind === 'as drawn') return [CHANGE_SIGNS[bought ? 'as drawn' : 'two passes']];
  return bought ? [CHANGE_SIGNS[kind], CHANGE_SIGNS['as drawn']] : [CHANGE_SIGNS[kind]];
};

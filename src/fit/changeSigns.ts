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
  'two passes': { sign: '↻', word: 'in two passes', says: 'with a bend made in two passes, nothing to buy' },
  'as drawn': { sign: '+', word: 'with a purchase', says: 'with an option or a tool to buy' },
  'other drawing': { sign: '≈', word: 'other drawing', says: 'only if the drawing is changed as named' },
  'in two': { sign: '÷', word: 'made in two', says: 'only as two parts that are joined' },
  'other machine': { sign: '≠', word: 'other machine', says: 'only if it were another machine, as named' },
};

/** Of the change that asks least of a cell; null where none lifts its no. */
export const changeSign = ({ verdict, remedies }: Pick<FitCell, 'verdict' | 'remedies'>): ChangeSign | null => {
  const first = verdict === 'makes with remedy' ? remedies.find(({ confirmed }) => confirmed) : undefined;
  if (!first) return null;
  const kind = changeKind(first);
  return CHANGE_SIGNS[kind === 'as drawn' && !first.items?.some(isBought) ? 'two passes' : kind];
};

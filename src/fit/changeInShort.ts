import type { FitCell } from './fitCell.js';
import { type ChangeKind, changeKind, costOfBought } from './changeKind.js';
import { costWords } from './costs.js';

const TERMS: Readonly<Record<ChangeKind, string>> = { 'as drawn': '', 'other drawing': ', if the drawing allows it', 'in two': ', if the drawing allows it', 'other machine': '' };

/** What would change a no, in a few words, for a cell: the change that asks least; null where there is none. */
export const changeInShort = ({ verdict, remedies, remediesCut, inVain }: Pick<FitCell, 'verdict' | 'remedies' | 'remediesCut' | 'inVain'>): string | null => {
  const first = remedies.find(({ confirmed }) => confirmed);
  if (verdict === 'does not make') {
    if (first) return `only by eye to a scribed line${remediesCut ? '; what else helps was not looked for to the end' : ''}`;
    return remediesCut ? 'what helps was not looked for to the end' : inVain === undefined ? 'what helps was not looked for' : 'nothing looked at helps';
  }
  if (verdict !== 'makes with remedy' || !first?.items) return null;
  const cost = costWords(costOfBought(first));
  const price = cost !== '' ? `, ${cost}${first.items.some(({ kind }) => kind === 'split') ? ' without joining' : ''}` : '';
  const [only, ...more] = first.items;
  // a part made in two says itself how it is made
  const how = only?.kind === 'split' && more.length === 0 ? only.name.replace(/^Made/, 'made')
    : `${changeKind(first) === 'other machine' ? 'made only if it were another machine' : 'made with'}: ${first.items.map(({ name }) => name).join(' + ')}`;
  return `${how}${price}${TERMS[changeKind(first)]}`;
};

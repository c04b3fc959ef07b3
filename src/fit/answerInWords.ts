import type { BoardMachine } from './fitBoard.js';
import type { FitCell } from './fitCell.js';
import { columnSum } from './columnSums.js';

interface Answered {
  readonly parts: readonly unknown[];
  readonly machines: readonly Pick<BoardMachine, 'name' | 'whose'>[];
  readonly cells: readonly (readonly (FitCell | null)[])[];
}

/** The machine of a column, and whose tools where they are not ours. */
export const columnName = ({ name, whose }: Pick<BoardMachine, 'name' | 'whose'>): string => (whose === 'ours' ? name : `${name}, ${whose.replace(/^ours, /, '')}`);

/** Which machines make all parts as they stand, which with changes, and where none does, which makes the most: the sentences at the head. */
export const answerInWords = ({ parts, machines, cells }: Answered): string => {
  const sums = machines.map((machine, m) => ({ name: columnName(machine), ...columnSum(cells.map((row) => row[m] ?? null)) }));
  const all = parts.length;
  const what = all === 1 ? 'this part' : `all ${all} parts`;
  const names = (list: readonly { readonly name: string }[]): string => list.map(({ name }) => name).join('; ');
  const asStands = sums.filter(({ makes }) => makes === all);
  const withMore = sums.filter(({ makes, withChange }) => makes < all && makes + withChange === all);
  if (asStands.length > 0) {
    const also = withMore.length > 0 ? ` With a change also: ${names(withMore)}.` : '';
    return `${asStands.length === 1 ? 'One machine makes' : `Each of these ${asStands.length} machines makes`} ${what} as it stands: ${names(asStands)}.${also}`;
  }
  const open = sums.filter((s) => s.open > 0 && s.no === 0);
  const none = open.length > 0 ? `No machine is shown to make ${what}; on ${names(open)} something is not decided.` : `No machine makes ${what} as it stands.`;
  const most = Math.max(0, ...sums.map(({ makes }) => makes));
  const first = all === 1 || most === 0 ? '' : ` The most are made by ${names(sums.filter(({ makes }) => makes === most))}: ${most} of ${all}.`;
  if (withMore.length > 0) return `${none}${first} With the changes named, ${what}: ${names(withMore)}.`;
  const farthest = Math.max(0, ...sums.map(({ makes, withChange }) => makes + withChange));
  const changed = farthest > most ? ` With the changes named the most: ${names(sums.filter(({ makes, withChange }) => makes + withChange === farthest))}, ${farthest} of ${all}.` : '';
  return `${none}${first}${changed}`;
};

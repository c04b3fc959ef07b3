import { listed } from '../trial/index.js';
import type { BoardMachine } from './fitBoard.js';
import type { FitCell } from './fitCell.js';
import { columnSum } from './columnSums.js';

interface Answered {
  readonly parts: readonly { readonly name: string }[];
  readonly machines: readonly Pick<BoardMachine, 'name' | 'whose' | 'standsStill'>[];
  readonly cells: readonly (readonly (FitCell | null)[])[];
}

/** The machine of a column, and whose tools where they are not ours. */
export const columnName = ({ name, whose }: Pick<BoardMachine, 'name' | 'whose'>): string => (whose === 'ours' ? name : `${name}, ${whose.replace(/^ours, /, '')}`);

/** Machines named in one sentence; of more it is told how many. */
const MOST_NAMED = 3;

/** Parts named in one sentence. */
const MOST_PARTS = 4;

/** What makes machines stand still whatever they make, each machine once. */
const stillWords = (machines: Answered['machines']): string =>
  [...new Set(machines.flatMap(({ name, standsStill = [] }) => (standsStill.length > 0 ? [` ⚠ “${name}”: ${standsStill.join(' ')}`] : [])))].join('');

/** Which machines make all parts as they stand, which with what sort of change, where none does, which makes the most, and which stand still whatever they make: the sentences at the head. */
export const answerInWords = (asked: Answered): string => `${madeInWords(asked)}${stillWords(asked.machines)}`;

const madeInWords = ({ parts, machines, cells }: Answered): string => {
  const sums = machines.map((machine, m) => ({ name: columnName(machine), ...columnSum(cells.map((row) => row[m] ?? null)), undecided: cells.flatMap((row, p) => (row[m]?.verdict === 'not decided' ? [p] : [])) }));
  const all = parts.length;
  const what = all === 1 ? 'this part' : all === 2 ? 'both parts' : `all ${all} parts`;
  // more names than can be taken in at a glance stand in the table below
  const names = (list: readonly { readonly name: string }[]): string =>
    list.length <= MOST_NAMED ? listed(list.map(({ name }) => `“${name}”`)) : list.length === machines.length ? `each of the ${list.length} machines` : `${list.length} of the ${machines.length} machines`;
  const [{ levels: steps } = { levels: [] }] = sums;
  const asStands = sums.filter(({ makes }) => makes === all);
  if (asStands.length > 0) {
    const also = steps.slice(1).map(({ words }, k) => {
      const now = sums.filter((l) => l.levels[k + 1]!.made === all && l.levels[k]!.made < all);
      return now.length > 0 ? ` ${words} also: ${names(now)}.` : '';
    });
    if (asStands.length === machines.length && asStands.length > MOST_NAMED) return `Each of the ${asStands.length} machines makes ${what} as it stands.`;
    return `${asStands.length === 1 ? 'One machine makes' : `Each of these ${asStands.length} machines makes`} ${what} as it stands: ${names(asStands)}.${also.join('')}`;
  }
  const open = sums.filter((s) => s.open > 0 && s.no === 0);
  const none = open.length > 0 ? `No machine is shown to make ${what}; on ${names(open)} something is not decided.` : `No machine makes ${what} as it stands.`;
  let most = Math.max(0, ...sums.map(({ makes }) => makes));
  const best = sums.filter(({ makes }) => makes === most);
  const first = all === 1 || most === 0 ? '' : best.length === machines.length && best.length > MOST_NAMED ? ` Each of the ${best.length} machines makes ${most} of ${all}.`
    : ` The most are made by ${names(best)}: ${most} of ${all}${best.length > 1 ? ' each' : ''}.`;
  const further = steps.slice(1).map(({ words }, k) => {
    const top = Math.max(...sums.map((l) => l.levels[k + 1]!.made));
    if (top <= most) return '';
    most = top;
    const by = names(sums.filter((l) => l.levels[k + 1]!.made === top));
    return top === all ? ` ${words}, ${what}: ${by}.` : ` ${words}, the most: ${by}, ${top} of ${all}${sums.filter((l) => l.levels[k + 1]!.made === top).length > 1 ? ' each' : ''}.`;
  });
  const onNone = (of: (sum: (typeof sums)[number], part: number) => boolean): string => {
    const left = parts.flatMap(({ name }, p) => (sums.every((sum) => of(sum, p)) ? [name] : []));
    // names hold commas of their own
    return left.length > MOST_PARTS ? `${left.length} of the parts` : left.join('; ');
  };
  const never = all === 1 ? '' : onNone((sum, p) => sum.noHelp.includes(p));
  const undecided = all === 1 ? '' : onNone((sum, p) => sum.undecided.includes(p));
  return `${none}${first}${further.join('')}${never === '' ? '' : ` Made by none, and nothing looked at helps: ${never}.`}${undecided === '' ? '' : ` Not decided on any: ${undecided}.`}`;
};

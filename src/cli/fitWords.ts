import { type Cheapest, type FitBoard, type FitCell, nothingCostsLess, reasonsTold } from '../fit/index.js';
import { CAVEAT } from '../forming/index.js';
import { table } from './table.js';

const SIGNS: Readonly<Record<FitCell['verdict'], string>> = {
  makes: '[+]', 'makes with remedy': '[~]', 'does not make': '[-]', 'not decided': '[?]', 'not tried': '[ ]',
};

const cellWords = ({ verdict, margins, seconds, reasons }: FitCell): string => {
  const [tight] = margins;
  const more = seconds !== null && verdict === 'makes' ? ` ${seconds.toFixed(0)} s${tight ? `, ${tight.kind} ${(tight.share * 100).toFixed(0)} %` : ''}` : reasons[0] ? ` ${reasons[0].code}` : '';
  return `${SIGNS[verdict]}${more}`;
};

const money = (n: number, currency: string): string => `${n.toLocaleString('en-GB')} ${currency}`;

const cheapestWords = (cheapest: Cheapest, parts: FitBoard['parts'], proven = nothingCostsLess()): string => {
  const bought = [...cheapest.machines, ...cheapest.options, ...cheapest.tools].map(({ name, price }) => `${name} (${money(price, cheapest.currency)})`);
  const cannot = cheapest.cannot.map((p) => parts[p]!.name);
  const gap = cheapest.proven ? proven : `at best ${money(cheapest.bound, cheapest.currency)}, not proven`;
  return [
    cannot.length === parts.length ? 'nothing looked at is shown to make any of these parts' : `${bought.join(', ') || 'nothing'}: ${money(cheapest.price, cheapest.currency)} (${gap})`,
    ...cheapest.asked.map(({ part, what }) => `${parts[part]!.name} only with ${what}, if the drawing allows it`),
    ...(cannot.length > 0 && cannot.length < parts.length ? [`not shown to be made by it: ${cannot.join('; ')}`] : []),
  ].join('; ');
};

/** What a column is that is not ours with our tools. */
const columnWords = ({ id, whose, name, rack, tools: { held, of, others } }: FitBoard['machines'][number]): string =>
  `${id}: ${whose === 'the buyer\'s' ? 'the buyer\'s machine' : 'our machine with the buyer\'s tools'}, ${name}, with ${rack}: it holds ${held} of ${of} tools${others.length > 0 ? ` (not ${others.join(', ')})` : ''}.`;

/** The board as a person reads it on a terminal. */
export const fitInWords = (board: FitBoard): string => [
  table(
    [{ heading: 'part' }, ...board.machines.map(({ id }) => ({ heading: id }))],
    board.parts.map(({ name }, p) => [name, ...board.cells[p]!.map(cellWords)]),
  ),
  '',
  '[+] makes, with predicted seconds a part and the share of its tightest limit that is used; [~] with a remedy; [-] does not make; [?] not decided; [ ] not tried',
  ...board.machines.filter(({ whose }) => whose !== 'ours').map(columnWords),
  '',
  ...board.cells.flatMap((row, p) => row.flatMap((cell, m) => cell.verdict === 'makes' ? [] : [
    `${board.parts[p]!.name} on ${board.machines[m]!.id}: ${cell.verdict}. ${reasonsTold(cell.reasons)[0]?.sentence ?? ''}`,
    ...cell.remedies.map((r) => `  ${r.confirmed ? 'Remedy' : 'Not confirmed'}: ${r.sentence}`),
    ...(cell.inVain === undefined ? [] : [`  ${cell.inVain}`]),
  ])),
  '',
  ...(board.cheapest ? [`Cheapest for all: ${cheapestWords(board.cheapest, board.parts, nothingCostsLess(board))}.`] : []),
  ...board.alone.map((alone, m) => (alone ? `On ${board.machines[m]!.id} alone: ${cheapestWords(alone, board.parts)}.` : '')),
  ...(board.options.length > 0 ? ['', 'What each option buys:'] : []),
  ...board.options.map((o) => `  ${o.machine}: ${o.sentence} (${money(o.price, o.currency)})`),
  '',
  CAVEAT,
].join('\n');

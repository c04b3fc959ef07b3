import { type FitBoard, type FitCell, cheapestOfAll, cheapestWords, money, nothingCostsLess, reasonsTold } from '../fit/index.js';
import { CAVEAT } from '../forming/index.js';
import { table } from './table.js';
import { show } from './units.js';
import { VERDICT_SIGN } from './verdictSign.js';

const cellWords = ({ verdict, margins, seconds, reasons }: FitCell): string => {
  const [tight] = margins;
  const more = seconds !== null && verdict === 'makes' ? ` ${seconds.toFixed(0)} s${tight ? `, ${tight.kind} ${(tight.share * 100).toFixed(0)} %` : ''}` : reasons[0] ? ` ${reasons[0].code}` : '';
  return `${VERDICT_SIGN[verdict]}${more}`;
};

/** What a column is that is not ours with our tools. */
const columnWords = ({ id, whose, name, rack, tools: { held, of, others } }: FitBoard['machines'][number]): string =>
  `${id}: ${whose === 'the buyer\'s' ? 'the buyer\'s machine' : 'our machine with the buyer\'s tools'}, ${name}, with ${rack}: it holds ${held} of ${of} tools${others.length > 0 ? ` (not ${others.join(', ')})` : ''}.`;

/** The board as a person reads it on a terminal. */
export const fitInWords = (board: FitBoard, units: 'mm' | 'in' | undefined): string => {
  const { words } = show(units);
  return [
  table(
    [{ heading: 'part' }, ...board.machines.map(({ id }) => ({ heading: id }))],
    board.parts.map(({ name }, p) => [name, ...board.cells[p]!.map(cellWords)]),
  ),
  '',
  `${VERDICT_SIGN.makes} makes, with predicted seconds a part and the share of its tightest limit that is used; ${VERDICT_SIGN['makes with remedy']} with a remedy; ${VERDICT_SIGN['does not make']} does not make; ${VERDICT_SIGN['not decided']} not decided; ${VERDICT_SIGN['not tried']} not tried`,
  ...board.machines.filter(({ whose }) => whose !== 'ours').map(columnWords),
  ...board.machines.flatMap(({ id, standsStill = [] }) => standsStill.map((words) => `Beware of ${id}: ${words}`)),
  '',
  ...board.cells.flatMap((row, p) => row.flatMap((cell, m) => cell.verdict === 'makes' ? [] : [
    `${board.parts[p]!.name} on ${board.machines[m]!.id}: ${cell.verdict}. ${words(reasonsTold(cell.reasons)[0]?.sentence ?? '')}`,
    ...cell.remedies.map((r) => `  ${r.confirmed ? 'Remedy' : 'Not confirmed'}: ${words(r.sentence)}`),
    ...(cell.inVain === undefined ? [] : [`  ${words(cell.inVain)}`]),
  ])),
  '',
  ...cheapestOfAll(board).map((said) => `Cheapest for ${board.cheapest?.cannot.length === 0 ? 'all' : 'those that are made'}: ${said}.`),
  ...board.alone.map((alone, m) => `On ${board.machines[m]!.id} alone: ${cheapestWords(alone, board, nothingCostsLess(), true)}.`),
  ...(board.options.length > 0 ? ['', 'What each option buys:'] : []),
  ...board.options.map((o) => `  ${o.machine}: ${words(o.sentence)} (${money(o.price, o.currency)})`),
  '',
    CAVEAT,
  ].join('\n');
};

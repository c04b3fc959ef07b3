import { type FitCell, answerInWords, changeInShort, cheapestOfAll, cheapestWords, columnName, columnSum, money, nothingCostsLess, reasonInShort } from '../../fit/index.js';
import { type Block, flow } from '../flow.js';
import { FRAME, INSET, line, paragraph } from '../paper.js';
import { titleArea, verdictFill } from '../titleBlock.js';
import { mark } from './figureKinds.js';
import { type GridCell, type GridColumn, drawRow, rowHeight } from '../grid.js';
import { INNER, type Pages, aboveStrip, columnsFrom } from '../pages.js';
import { optionBlocks } from './optionBlocks.js';
import type { ReportData } from './reportData.js';
import { percent, shortNames, verdictWords } from './reportWords.js';

/** mm for the names of the parts, and machines side by side at most. */
const NAMES = 52;
const MOST_ACROSS = 8;

const cellOf = (cell: FitCell, size: number): GridCell => {
  const [tight] = cell.margins;
  const under = cell.verdict === 'makes'
    ? [tight ? `${tight.kind} ${percent(tight.share)} used` : '', cell.seconds === null ? '' : `${cell.seconds.toFixed(0)} s a part`]
    : [reasonInShort(cell) ?? '', changeInShort(cell) ?? ''];
  return { words: verdictWords(cell), under: under.filter((w) => w !== '').join('\n'), size, bold: true, fill: verdictFill(cell.verdict) };
};

const headOf = (data: ReportData, machines: readonly number[], size: number): GridCell[] => [
  { words: 'Part', size, bold: true },
  ...machines.map((m): GridCell => {
    const machine = data.machines[m]!;
    return { words: columnName(data.board.machines[m]!), under: `${machine.condition}, ${money(machine.price, machine.currency)} ${mark('price')}${data.board.machines[m]!.standsStill ? '\n⚠ stands still' : ''}`, size, bold: true };
  }),
];

const rowOf = (data: ReportData, p: number, machines: readonly number[], size: number): GridCell[] => {
  const { name, thickness, bends } = data.board.parts[p]!;
  const demo = data.parts[p]!.demo ? ', demo' : '';
  return [
    { words: name, under: `${thickness.toFixed(2)} mm thick, ${bends} ${bends === 1 ? 'bend' : 'bends'}${demo}`, size, bold: true },
    ...machines.map((m) => cellOf(data.board.cells[p]![m]!, size)),
  ];
};

/** Parts named as far as they are few. */
const NAMED = 3;

/** What one machine's paragraph says after its name: how many it makes, why not the others, what would change it. */
const machineSays = ({ board }: ReportData, m: number): string => {
  const sum = columnSum(board.cells.map((row) => row[m]!));
  const of = (parts: readonly number[]): string => (parts.length > NAMED ? `${parts.length} parts` : parts.map((p) => board.parts[p]!.name).join('; '));
  const why = sum.why.map(({ words, parts }) => `${words} (${of(parts)})`);
  const changes = sum.changes.map(({ words, cost, terms, parts }) => `${words}${cost === '' ? '' : `, ${cost}`}${terms === '' ? '' : `, ${terms}`} (${of(parts)})`);
  const levels = sum.levels.filter(({ more }) => more > 0).map((level) => `${level.words}: ${level.made} of ${board.cells.length}.`);
  return [
    `makes ${sum.makes} of ${board.parts.length} as it stands${sum.open > 0 ? `; ${sum.open} not decided or not tried` : ''}.`,
    ...(board.machines[m]!.standsStill ?? []).map((words) => `⚠ ${words}`),
    ...levels,
    ...(why.length > 0 ? [`Why not the others: ${why.join('; ')}.`] : []),
    ...(changes.length > 0 ? [`What would change it ${mark('remedy')}: ${changes.join('; ')}.`] : []),
    ...(sum.byEye.length > 0 ? [`Only by eye to a scribed line: ${of(sum.byEye)}.`] : []),
    ...(sum.noHelp.length > 0 ? [`Nothing that was looked at helps: ${of(sum.noHelp)}.`] : []),
    ...(sum.cut.length > 0 ? [`What helps was not looked for to the end: ${of(sum.cut)}.`] : []),
  ].join(' ');
};

/** Each machine in a paragraph; those of which the same is to be said share one. */
const machineBlock = (data: ReportData): Block => {
  const { machines } = data.board;
  const names = shortNames(machines);
  const groups = new Map<string, number[]>();
  machines.forEach((_, m) => groups.set(machineSays(data, m), [...(groups.get(machineSays(data, m)) ?? []), m]));
  return {
    heading: `Machine by machine ${mark('verdict')}`,
    paragraphs: [...groups].map(([words, of]) => ({
      sign: '–', style: { size: 2.4 },
      words: of.length === 1 ? `${columnName(machines[of[0]!]!)} ${words}` : of.length === machines.length ? `Each of the ${of.length} machines ${words}` : `${of.map((m) => names[m]!).join('; ')}: each ${words}`,
    })),
  };
};

/** What making all costs, for the whole floor and for each machine alone: where nothing is to be bought beside it, its own price is at the head of its column. */
const costBlocks = (data: ReportData): Block[] => [
  {
    heading: 'Not read, so not in this report',
    paragraphs: (data.notRead ?? []).map(({ part, sentence }) => ({ words: `${part}: ${sentence}`, sign: '⚠', style: { size: 2.6 } })),
  },
  machineBlock(data),
  {
    heading: `${data.board.cheapest?.cannot.length !== 0 ? 'Cheapest for those of these parts that are made' : 'Cheapest for all these parts'} ${mark('cheapest')}`,
    paragraphs: cheapestOfAll(data.board).map((said) => ({ words: `${said[0]!.toUpperCase()}${said.slice(1)}.`, style: { size: 2.6 } })),
  },
  {
    heading: `Each machine alone, with what it lacks ${mark('cheapest')}`,
    paragraphs: data.board.alone.flatMap((alone, m) => (alone && alone.options.length + alone.tools.length + (alone.unpriced ?? []).length === 0 ? [] : [{
      words: `${columnName(data.board.machines[m]!)}: ${cheapestWords(alone, data.board, nothingCostsLess(), true)}.`, sign: '–', style: { size: 2.4 },
    }])),
  },
  ...optionBlocks(data),
  { heading: 'Tools', paragraphs: [{ words: `Planned with the tools at hand: ${data.racks.map(({ name, demo }) => (demo && !/demo/i.test(name) ? `${name} (demo)` : name)).join('; ')}.`, style: { size: 2.4 } }] },
].filter(({ paragraphs }) => paragraphs.length > 0);

/** The first sheets: the answer, parts against machines, and what making all of them costs. */
export const drawBoardPages = (pages: Pages, data: ReportData): void => {
  const { doc } = pages;
  pages.begin('parts against machines');
  const title = titleArea();
  let { y } = INNER;
  line(doc, 'Which machine makes your parts', INNER.x, y, INNER.width, { size: 5.4, bold: true });
  y += 8;
  y += paragraph(doc, answerInWords(data.board), INNER.x, y, INNER.width, { size: 3.4, fill: 'accent', bold: true }) + 1;
  y += paragraph(
    doc,
    `Predictions for a batch of ${data.quantity}. In each place: the verdict ${mark('verdict')}, how much of its tightest limit is used ${mark('force')} to ${mark('tolerance')}, seconds a part ${mark('seconds')}; for a no, its first reason. The numbers in brackets say how a figure came about: see the last sheet.`,
    INNER.x, y, INNER.width, { size: 2.5 },
  ) + 2;
  const all = data.machines.map((_, m) => m);
  const across = Math.min(MOST_ACROSS, Math.ceil(all.length / Math.ceil(all.length / MOST_ACROSS)));
  let first = true;
  for (let at = 0; at < all.length; at += across) {
    const machines = all.slice(at, at + across);
    const columns: GridColumn[] = [{ width: NAMES }, ...machines.map(() => ({ width: Math.min(54, (INNER.width - NAMES) / machines.length) }))];
    const size = machines.length > 6 ? 2.4 : 2.7;
    const head = headOf(data, machines, size);
    const rows = data.board.parts.map((_, p) => rowOf(data, p, machines, size));
    const start = (): void => {
      y += drawRow(doc, columns, head, INNER.x, y);
    };
    if (y + rowHeight(doc, columns, head) + rowHeight(doc, columns, rows[0]!) > (first ? title.y - 2 : aboveStrip())) {
      pages.begin('parts against machines');
      first = false;
      y = INNER.y;
    }
    start();
    for (const row of rows) {
      if (y + rowHeight(doc, columns, row) > (first ? title.y - 2 : aboveStrip())) {
        pages.begin('parts against machines');
        first = false;
        y = INNER.y;
        start();
      }
      y += drawRow(doc, columns, row, INNER.x, y);
    }
    y += 3;
  }
  const bottom = FRAME.y + FRAME.height - INSET;
  const beside = first
    ? [
      { x: INNER.x, y, width: title.x - INNER.x - 4, height: bottom - y },
      { x: title.x, y, width: title.width - INSET, height: title.y - y - 2 },
    ].filter(({ height }) => height > 14)
    : columnsFrom(y, 2).filter(({ height }) => height > 14);
  const more = (): ReturnType<typeof columnsFrom> => {
    pages.begin('what making all of them costs');
    return columnsFrom(INNER.y, 2);
  };
  flow(doc, costBlocks(data), beside.length > 0 ? beside : more(), more);
};

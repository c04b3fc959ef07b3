import { type FitMargin, columnName } from '../../fit/index.js';
import { blank } from '../../sheet/index.js';
import { drawPicture } from '../drawPicture.js';
import { type Block, flow } from '../flow.js';
import { type Units, lengthText } from '../format.js';
import { line, paragraph } from '../paper.js';
import { finalAngles, partPicture } from '../partPicture.js';
import { verdictFill } from '../titleBlock.js';
import { bewareWords } from './bewareWords.js';
import { MARGINS, mark } from './figureKinds.js';
import { type GridCell, type GridColumn, drawRow, rowHeight } from '../grid.js';
import { INNER, type Pages, aboveStrip, columnsFrom } from '../pages.js';
import type { ReportData } from './reportData.js';
import { marginAmounts, paceWords, percent, verdictWords } from './reportWords.js';
import { whyNotBlocks } from './whyNotBlocks.js';

const PICTURE = { width: 92, height: 58 } as const;
/** mm: what the figures of a column take on one line. */
const WIDTHS: Readonly<Record<string, number>> = { force: 30, 'gauge travel': 34, length: 26, tolerance: 24 };
const FIRST = 44 + 27 + 32;
const OTHERS = MARGINS.filter(([kind]) => WIDTHS[kind] === undefined).length;
const REST = (INNER.width - FIRST - MARGINS.reduce((sum, [kind]) => sum + (WIDTHS[kind] ?? 0), 0)) / OTHERS;
const COLUMNS: readonly GridColumn[] = [{ width: 44 }, { width: 27 }, { width: 32 }, ...MARGINS.map(([kind]) => ({ width: WIDTHS[kind] ?? REST }))];
const SIZE = 2.5;

const marginCell = (margin: FitMargin | undefined, units: Units): GridCell =>
  margin === undefined ? { words: '–', size: SIZE }
    : { words: `${percent(margin.share)} used`, under: `${marginAmounts(margin, units)}${margin.step > 0 ? `\nstep ${margin.step}` : ''}`, size: SIZE, bold: true };

const machineRow = (data: ReportData, p: number, m: number, units: Units): GridCell[] => {
  const cell = data.board.cells[p]![m]!;
  const { demo } = data.machines[m]!;
  const name = columnName(data.board.machines[m]!);
  const made = cell.verdict === 'makes' && cell.seconds !== null;
  return [
    { words: name, ...(demo && !/demo/i.test(name) ? { under: 'demo' } : {}), size: SIZE, bold: true },
    { words: verdictWords(cell), under: made && cell.proof.passed ? 'replayed and passed' : '', size: SIZE, bold: true, fill: verdictFill(cell.verdict) },
    made ? { words: `${cell.seconds!.toFixed(1)} s`, under: paceWords(cell, [mark('parts an hour'), mark('change-over')]), size: SIZE, bold: true } : { words: '–', size: SIZE },
    ...MARGINS.map(([kind]) => marginCell(made ? cell.margins.find((margin) => margin.kind === kind) : undefined, units)),
  ];
};

const HEAD: readonly GridCell[] = [
  { words: 'Machine' }, { words: `Verdict ${mark('verdict')}` }, { words: `A part, predicted ${mark('seconds')}`, under: 'set-up shared over the quantity' },
  ...MARGINS.map(([kind, heading]) => ({ words: `${heading} ${mark(kind)}` })),
].map((cell) => ({ ...cell, size: SIZE, bold: true }));

const factsOf = (data: ReportData, p: number, units: Units): string => {
  const { sheet, flatBy, demo } = data.parts[p]!;
  const flat = blank(sheet);
  const { thickness, bends } = sheet.part;
  const size = flat.ok ? `Blank ${lengthText(flat.value.length, units)} by ${lengthText(flat.value.width, units)}, ${flatBy} ${mark('blank')}.` : flat.failure.sentence;
  return `${lengthText(thickness, units)} thick, ${bends.length} ${bends.length === 1 ? 'bend' : 'bends'}. ${data.metal.name}. ${size}${demo ? ' A demo part, invented.' : ''}`;
};

/** One sheet for a part: drawn, on every machine with its margins, and for every no its reasons and remedies. */
export const drawPartPages = (pages: Pages, data: ReportData, p: number): void => {
  const { doc } = pages;
  const { units = 'mm' } = data;
  const { sheet } = data.parts[p]!;
  const { name } = data.board.parts[p]!;
  pages.begin(name);
  const [x, top] = [INNER.x, INNER.y];
  drawPicture(doc, partPicture(sheet, finalAngles(sheet), PICTURE), x, top);
  const right = x + PICTURE.width + 6;
  const wide = INNER.width - PICTURE.width - 6;
  line(doc, name, right, top, wide, { size: 5.4, bold: true });
  let y = top + 8;
  y += paragraph(doc, factsOf(data, p, units), right, y, wide, { size: 2.8 }) + 2;
  const made = data.board.cells[p]!.flatMap((cell, m) => (cell.verdict === 'makes' ? [columnName(data.board.machines[m]!)] : []));
  const open = data.board.cells[p]!.filter(({ verdict }) => verdict === 'not decided' || verdict === 'not tried').length;
  const none = open > 0 ? `No machine looked at is shown to make it as it stands; ${open} of ${data.board.machines.length} not decided or not tried.` : 'No machine looked at makes it as it stands.';
  const all = data.board.machines.length;
  const answer = made.length === 0 ? none : made.length === all && all > 1 ? `Made as it stands by each of the ${all} machines.` : `Made as it stands by: ${made.join('; ')}.`;
  paragraph(doc, answer, right, y, wide, { size: 3, bold: true, fill: 'accent' });
  y = top + PICTURE.height + 2;
  // margins are those of a plan: where no machine has one the reasons say all
  if (made.length > 0) y += drawRow(doc, COLUMNS, HEAD, x, y);
  for (const m of made.length > 0 ? data.machines.keys() : []) {
    const row = machineRow(data, p, m, units);
    if (y + rowHeight(doc, COLUMNS, row) > aboveStrip()) {
      pages.begin(`${name} (continued)`);
      y = top + drawRow(doc, COLUMNS, HEAD, x, top);
    }
    y += drawRow(doc, COLUMNS, row, x, y);
  }
  y += 3;
  const beware = bewareWords(data.board).ofPart[p]!;
  const blocks: Block[] = [
    ...(beware.length > 0 ? [{ heading: 'Beware', paragraphs: beware.map((words) => ({ words, sign: '⚠', style: { size: SIZE } })) }] : []), ...whyNotBlocks(data.board, p),
  ];
  if (blocks.length === 0) return;
  const more = (): ReturnType<typeof columnsFrom> => {
    pages.begin(`${name} (continued)`);
    return columnsFrom(INNER.y, 2);
  };
  const columns = columnsFrom(y, 2).filter(({ height }) => height > 14);
  flow(doc, blocks, columns.length > 0 ? columns : more(), more);
};

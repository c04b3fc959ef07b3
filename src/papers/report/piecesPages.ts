import { type MadePiece, type PieceDifference, type PieceRecord, withinTolerance } from '../../fit/index.js';
import { type Units, lengthText } from '../format.js';
import { type GridCell, type GridColumn, drawRow, rowHeight } from '../grid.js';
import { INNER, type Pages, aboveStrip } from '../pages.js';
import { line, paragraph } from '../paper.js';
import { mark } from './figureKinds.js';
import type { Demonstrated } from './reportData.js';

const WIDTHS = [74, 30, 26, 20, 30, 30, 34, 23];
const COLUMNS: readonly GridColumn[] = WIDTHS.map((width) => ({ width }));
const HEAD: readonly GridCell[] = ['Figure', 'Predicted', 'Tolerance', 'Pieces', 'Mean difference', 'Spread', 'Least to most', 'Within'].map((words) => ({ words, size: 2.5, bold: true }));
const LIST: readonly GridColumn[] = [{ width: 30 }, { width: 24 }, { width: 52 }, { width: 101 }, { width: 60 }];
const LIST_HEAD: readonly GridCell[] = ['Serial', 'Metal batch', 'Tools', 'Measured (less predicted)', 'Who, when, with what'].map((words) => ({ words, size: 2.5, bold: true }));

const amount = (value: number, unit: 'mm' | 'degrees', units: Units): string => (unit === 'degrees' ? `${value < 0 ? '−' : ''}${Math.abs(value).toFixed(2)}°` : lengthText(value, units));
const signed = (value: number, unit: 'mm' | 'degrees', units: Units): string => `${value > 0 ? '+' : ''}${amount(value, unit, units)}`;

const differenceRow = (d: PieceDifference, units: Units): GridCell[] => [
  `${d.what}`, amount(d.predicted, d.unit, units), d.tolerance === null ? 'none asked' : `${d.drawn === undefined ? '' : `drawn ${amount(d.drawn, d.unit, units)} `}± ${amount(d.tolerance, d.unit, units)}`, String(d.count),
  signed(d.mean, d.unit, units), d.deviation === null ? 'one piece' : amount(d.deviation, d.unit, units),
  `${signed(d.least, d.unit, units)} to ${signed(d.most, d.unit, units)}`, d.within === null ? '–' : `${d.within} of ${d.count}`,
].map((words, i): GridCell => ({
  words, size: 2.4, bold: i === 4, ...(i === 7 && d.within !== null && d.within < d.count ? { fill: 'warning' as const, words: `⚠ ${words}` } : {}),
}));

const pieceRow = (record: PieceRecord, entry: MadePiece, units: Units): GridCell[] => [
  { words: entry.serial, size: 2.4, bold: true }, { words: entry.batch, size: 2.4 }, { words: entry.tools, size: 2.1 },
  { words: `${entry.figures.map((f) => `${f.what}: ${amount(f.measured, f.unit, units)} (${signed(f.measured - f.predicted, f.unit, units)}${withinTolerance(f) === false ? ', ⚠ out of tolerance' : ''})`).join('; ')}${entry.note === '' ? '' : `. ${entry.note}`}`, size: 2.2 },
  { words: `${record.by}, ${record.createdAt.slice(0, 16).replace('T', ' ')} UTC${entry.instrument === '' ? '' : `, ${entry.instrument}`}${record.corrects === null ? '' : '; corrects an earlier entry'}`, size: 2.2 },
];

/** What was really made, on sheets of its own: measured figures are never set among predicted ones without saying which is which. */
export const drawPiecesPages = (pages: Pages, all: readonly Demonstrated[], units: Units): void => {
  if (all.length === 0) return;
  const { doc } = pages;
  const name = 'pieces demonstrated: measured';
  pages.begin(name);
  let { y } = INNER;
  line(doc, 'Pieces demonstrated: made and measured, not predicted', INNER.x, y, INNER.width, { size: 5.4, bold: true });
  y += 8;
  y += paragraph(
    doc,
    `Difference is measured less predicted ${mark('piece')}: a mean far from nought is corrected on the control or by the deduction, the spread is what stays. Nothing on this sheet is a prediction but the column of that name.`,
    INNER.x, y, INNER.width, { size: 2.5 },
  ) + 2;
  const room = (needed: number): void => {
    if (y + needed <= aboveStrip()) return;
    pages.begin(name);
    ({ y } = INNER);
  };
  const rows = (columns: readonly GridColumn[], head: readonly GridCell[], body: readonly (readonly GridCell[])[]): void => {
    room(rowHeight(doc, columns, head) + (body[0] ? rowHeight(doc, columns, body[0]) : 0));
    y += drawRow(doc, columns, head, INNER.x, y);
    for (const row of body) {
      room(rowHeight(doc, columns, row));
      y += drawRow(doc, columns, row, INNER.x, y);
    }
    y += 3;
  };
  for (const { part, machine, records, differences } of all) {
    room(40);
    line(doc, `${part} on ${machine}`, INNER.x, y, INNER.width, { size: 3.4, bold: true });
    y += 6;
    rows(COLUMNS, HEAD, differences.map((d) => differenceRow(d, units)));
    rows(LIST, LIST_HEAD, records.flatMap((record) => (record.entry.kind === 'piece' ? [pieceRow(record, record.entry, units)] : [])));
  }
};

import { type Doc, type Lettering, paragraph, paragraphHeight, rule } from './paper.js';

export interface GridCell extends Lettering {
  readonly words: string;
  /** A second paragraph under the first, smaller. */
  readonly under?: string;
}

export interface GridColumn {
  /** mm */
  readonly width: number;
}

/** mm of air in a cell, beside and above its words. */
const AIR = { side: 1.2, top: 0.9, bottom: 1.1 } as const;
const UNDER = 2.1;

const cellHeight = (doc: Doc, cell: GridCell, width: number): number =>
  paragraphHeight(doc, cell.words, width, cell) + (cell.under === undefined ? 0 : paragraphHeight(doc, cell.under, width, { size: UNDER }));

/** mm that a row takes. */
export const rowHeight = (doc: Doc, columns: readonly GridColumn[], row: readonly GridCell[]): number =>
  Math.max(...row.map((cell, i) => cellHeight(doc, cell, columns[i]!.width - 2 * AIR.side))) + AIR.top + AIR.bottom;

/** Draws a row with its upper left corner at (x, y) and a rule under it, at least as high as `least`; returns its height. mm */
export const drawRow = (doc: Doc, columns: readonly GridColumn[], row: readonly GridCell[], x: number, y: number, least = 0): number => {
  const height = Math.max(least, rowHeight(doc, columns, row));
  let left = x;
  row.forEach((cell, i) => {
    const width = columns[i]!.width - 2 * AIR.side;
    const used = paragraph(doc, cell.words, left + AIR.side, y + AIR.top, width, cell);
    if (cell.under !== undefined) paragraph(doc, cell.under, left + AIR.side, y + AIR.top + used, width, { size: UNDER, align: cell.align ?? 'left' });
    left += columns[i]!.width;
  });
  rule(doc, x, y + height, left, y + height, 'rule');
  return height;
};

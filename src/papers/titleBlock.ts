import { type FitVerdict, VERDICT_SIGNS } from '../fit/index.js';
import { CAVEAT } from '../forming/index.js';
import type { Trial } from '../trial/index.js';
import { type Area, type Doc, FRAME, PAGE, box, line, rule } from './paper.js';
import type { FillName } from './pens.js';

/** What stands in the title block of every sheet of a set. */
export interface TitleData {
  readonly part: string;
  readonly revision: string;
  readonly metal: string;
  readonly quantity: string;
  readonly machine: string;
  readonly thickness: string;
  readonly date: string;
  readonly who: string;
  readonly verdict: Trial['verdict'];
}

export const verdictFill = (verdict: FitVerdict): FillName => (verdict === 'makes' ? 'ink' : 'warning');

export interface Cell {
  /** Shares of the row. */
  readonly share: number;
  readonly label: string;
  readonly value: string;
  readonly size?: number;
  readonly bold?: boolean;
  readonly fill?: FillName;
}

const drawRow = (doc: Doc, cells: readonly Cell[], area: Area): void => {
  const whole = cells.reduce((sum, { share }) => sum + share, 0);
  let x = area.x;
  cells.forEach((cell, i) => {
    const width = (area.width * cell.share) / whole;
    if (i > 0) rule(doc, x, area.y, x, area.y + area.height);
    line(doc, cell.label, x + 1.2, area.y + 0.8, width - 2.4, { size: 1.9 });
    const size = cell.size ?? 2.9;
    line(doc, cell.value, x + 1.2, area.y + area.height - size * 1.42, width - 2.4, {
      size, bold: cell.bold ?? false, fill: cell.fill ?? 'ink',
    });
    x += width;
  });
};

/** Rows of labelled fields in a heavy frame. */
export const drawRows = (doc: Doc, rows: readonly (readonly Cell[])[], area: Area): void => {
  const height = area.height / rows.length;
  rows.forEach((cells, k) => {
    const y = area.y + k * height;
    if (k > 0) rule(doc, area.x, y, area.x + area.width, y);
    drawRow(doc, cells, { x: area.x, y, width: area.width, height });
  });
  box(doc, area, 'frame');
};

/** The size of the full block and of the strip on following sheets, lower right in the frame. mm */
export const TITLE = { width: 104, height: 38 } as const;
export const STRIP = { width: 158, height: 15 } as const;

const lowerRight = (width: number, height: number): Area => ({
  x: FRAME.x + FRAME.width - width, y: FRAME.y + FRAME.height - height, width, height,
});

export const titleArea = (): Area => lowerRight(TITLE.width, TITLE.height);
export const stripArea = (): Area => lowerRight(STRIP.width, STRIP.height);

/** The title block of the first sheet. */
export const drawTitleBlock = (doc: Doc, data: TitleData, sheet: string): void =>
  drawRows(
    doc,
    [
      [
        { share: 3.4, label: 'Part', value: data.part, size: 3.8, bold: true },
        { share: 1, label: 'Revision', value: data.revision, size: 3.8, bold: true },
      ],
      [
        { share: 3.4, label: 'Metal', value: data.metal },
        { share: 1.3, label: 'Thickness', value: data.thickness },
        { share: 1, label: 'Quantity', value: data.quantity },
      ],
      [
        { share: 3, label: 'Machine', value: data.machine },
        { share: 2, label: 'Verdict', value: `${VERDICT_SIGNS[data.verdict]} ${data.verdict}`, size: 3.4, bold: true, fill: verdictFill(data.verdict) },
      ],
      [
        { share: 1.4, label: 'Date', value: data.date },
        { share: 2, label: 'Who', value: data.who },
        { share: 1.6, label: 'Brakewright', value: sheet },
      ],
    ],
    titleArea(),
  );

/** The strip on following sheets: enough to know a loose page by. */
export const drawTitleStrip = (doc: Doc, data: TitleData, what: string, sheet: string): void =>
  drawRows(
    doc,
    [
      [
        { share: 3, label: 'Part', value: data.part, bold: true },
        { share: 0.9, label: 'Revision', value: data.revision, bold: true },
        { share: 2.2, label: 'What', value: what, bold: true },
      ],
      [
        { share: 2.2, label: 'Metal', value: data.metal },
        { share: 1.7, label: 'Machine', value: data.machine },
        { share: 1, label: 'Date', value: data.date },
        { share: 1.2, label: 'Sheet', value: sheet },
      ],
    ],
    stripArea(),
  );

/** The frame and the line at the foot, on every page. */
export const drawFrame = (doc: Doc): void => {
  box(doc, FRAME, 'frame');
  line(doc, CAVEAT, FRAME.x, FRAME.y + FRAME.height + 1.8, FRAME.width, { size: 2.5, align: 'center' });
  // centre marks, by which a copy is laid straight
  const [cx, cy] = [FRAME.x + FRAME.width / 2, FRAME.y + FRAME.height / 2];
  rule(doc, cx, FRAME.y - 3, cx, FRAME.y, 'edge');
  rule(doc, FRAME.x - 3, cy, FRAME.x, cy, 'edge');
  rule(doc, FRAME.x + FRAME.width, cy, Math.min(PAGE.width - 4, FRAME.x + FRAME.width + 3), cy, 'edge');
};

import { type Doc } from '../paper.js';
import { drawRows, stripArea, titleArea } from '../titleBlock.js';
import type { ReportData } from './reportData.js';
import { percent } from './reportWords.js';

const answer = ({ board }: ReportData): string => {
  const all = board.cells.flat();
  const yes = all.filter(({ verdict }) => verdict === 'makes').length;
  return `${yes} of ${all.length} made as they stand (${percent(yes / Math.max(1, all.length))})`;
};

const partsWords = ({ board: { parts } }: ReportData): string => (parts.length === 1 ? parts[0]!.name : `${parts.length} parts`);

/** The block on the report's first sheet. */
export const drawReportBlock = (doc: Doc, data: ReportData, sheet: string): void =>
  drawRows(doc, [
    [
      { share: 3.4, label: 'Buyer\'s report for', value: data.typed.buyer ?? '', size: 3.8, bold: true },
      { share: 1.4, label: 'Parts', value: partsWords(data), size: 3.2, bold: true },
    ],
    [
      { share: 3.4, label: 'Metal', value: data.metal.name },
      { share: 1.4, label: 'Quantity a batch', value: `${data.quantity}` },
    ],
    [
      { share: 2, label: 'Machines looked at', value: String(data.machines.length) },
      { share: 3, label: 'Parts on machines', value: answer(data), bold: true },
    ],
    [
      { share: 1.4, label: 'Date', value: data.typed.date ?? '' },
      { share: 2, label: 'Who', value: data.typed.who ?? '' },
      { share: 1.6, label: 'Brakewright', value: sheet },
    ],
  ], titleArea());

/** The strip on the sheets that follow. */
export const drawReportStrip = (doc: Doc, data: ReportData, what: string, sheet: string): void =>
  drawRows(doc, [
    [
      { share: 2.4, label: 'Buyer\'s report for', value: data.typed.buyer ?? '', bold: true },
      { share: 3.2, label: 'What', value: what, bold: true },
    ],
    [
      { share: 2.4, label: 'Metal', value: data.metal.name },
      { share: 1, label: 'Quantity a batch', value: `${data.quantity}` },
      { share: 1, label: 'Date', value: data.typed.date ?? '' },
      { share: 1.2, label: 'Sheet', value: sheet },
    ],
  ], stripArea());

import { bytesOf, openDocument } from '../document.js';
import { drawBoardPages } from './boardPages.js';
import { drawClosingPages } from './closingPages.js';
import { newPages } from '../pages.js';
import { drawPartPages } from './partPages.js';
import { drawPiecesPages } from './piecesPages.js';
import type { ReportData } from './reportData.js';
import { drawReportBlock, drawReportStrip } from './reportTitle.js';
import { drawWalkPages } from './walkPages.js';

/**
 * The buyer's report as a PDF (A4 lying): parts against machines, a sheet for each part with its margins, reasons and remedies, one
 * part stroke by stroke, what was typed and assumed, and how every kind of figure came about.
 */
export const buyersReportPdf = async (data: ReportData): Promise<Uint8Array> => {
  const doc = openDocument(`Buyer's report${data.typed.buyer === undefined ? '' : ` for ${data.typed.buyer}`}`, data.typed.who ?? '');
  const pages = newPages(doc);
  drawBoardPages(pages, data);
  data.parts.forEach((_, p) => drawPartPages(pages, data, p));
  if (data.walk) drawWalkPages(pages, data.walk, data.units ?? 'mm');
  drawPiecesPages(pages, data.demonstrated, data.units ?? 'mm');
  drawClosingPages(pages, data);
  pages.names.forEach((name, k) => {
    doc.switchToPage(k);
    const count = `sheet ${k + 1} of ${pages.names.length}`;
    if (k === 0) drawReportBlock(doc, data, count);
    else drawReportStrip(doc, data, name, count);
  });
  return bytesOf(doc);
};

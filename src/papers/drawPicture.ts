import type {} from 'pdfkit'; // brings the PDFKit types in
import type { Vec2 } from '../geometry/index.js';
import { FILLS, PENS, type PenName } from './pens.js';
import { type Item, type Picture, patchOf } from './picture.js';

/** Points of a PDF page in a millimetre. */
export const POINTS_PER_MM = 72 / 25.4;

/** The names under which the page's two fonts are registered with the document. */
export const PLAIN_FONT = 'plain';
export const BOLD_FONT = 'bold';

const trace = (doc: PDFKit.PDFDocument, points: readonly Vec2[], closed: boolean): void => {
  points.forEach(([x, y], i) => (i === 0 ? doc.moveTo(x, y) : doc.lineTo(x, y)));
  if (closed) doc.closePath();
};

const takePen = (doc: PDFKit.PDFDocument, name: PenName, scale: number): void => {
  const { stroke, width, dash } = PENS[name];
  // a picture drawn smaller keeps its pens: a line thinner than the thinnest pen would not print
  doc.lineWidth(width / scale).strokeColor(stroke).lineJoin('round').lineCap(dash ? 'butt' : 'round');
  if (dash) doc.dash(dash[0]! / scale, { space: dash[1]! / scale });
  else doc.undash();
  if (dash && dash.length > 2) doc.addContent(`[${dash.map((d) => (d / scale).toFixed(3)).join(' ')}] 0 d`);
};

const drawItem = (doc: PDFKit.PDFDocument, item: Item, scale: number): void => {
  switch (item.kind) {
    case 'polyline':
      if (item.points.length < 2) return;
      takePen(doc, item.pen, scale);
      trace(doc, item.points, item.closed ?? false);
      doc.stroke();
      return;
    case 'strokes':
      if (item.lines.length === 0) return;
      takePen(doc, item.pen, scale);
      for (const line of item.lines) trace(doc, line, false);
      doc.stroke();
      return;
    case 'area':
      if (item.rings.length === 0) return;
      for (const ring of item.rings) trace(doc, ring, true);
      doc.fillColor(FILLS[item.fill]).fill('even-odd');
      return;
    case 'text': {
      if (item.patch) {
        trace(doc, patchOf(item), true);
        doc.fillColor(FILLS.paper).fill();
      }
      doc.save();
      if (item.turned) doc.rotate(-item.turned, { origin: [item.at[0], item.at[1]] });
      doc.font(item.bold ? BOLD_FONT : PLAIN_FONT).fontSize(item.size).fillColor(FILLS[item.fill]);
      const width = doc.widthOfString(item.text);
      const left = item.at[0] - (item.anchor === 'start' ? 0 : item.anchor === 'middle' ? width / 2 : width);
      doc.text(item.text, left, item.at[1], { lineBreak: false, baseline: 'alphabetic' });
      doc.restore();
      return;
    }
    case 'group':
      for (const inner of item.items) drawItem(doc, inner, scale);
      return;
  }
};

/**
 * Draws the picture on the document's page with its upper left corner at (x, y), all in mm of paper; `scale` 1 draws it
 * at the size that it was made for. The fonts `PLAIN_FONT` and `BOLD_FONT` must be registered.
 */
export const drawPicture = (doc: PDFKit.PDFDocument, picture: Picture, x: number, y: number, scale = 1): void => {
  doc.save();
  doc.transform(POINTS_PER_MM * scale, 0, 0, POINTS_PER_MM * scale, x * POINTS_PER_MM, y * POINTS_PER_MM);
  for (const item of picture.items) drawItem(doc, item, scale);
  doc.undash();
  doc.restore();
};

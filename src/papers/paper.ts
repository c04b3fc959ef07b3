import type {} from 'pdfkit';
import { BOLD_FONT, PLAIN_FONT, POINTS_PER_MM as K } from './drawPicture.js';
import { FILLS, type FillName, PENS, type PenName } from './pens.js';

export type Doc = PDFKit.PDFDocument;

/** A place on the page in mm. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A4 lying. mm */
export const PAGE = { width: 297, height: 210 } as const;
/** The drawing frame: a wide edge on the left to be filed by. */
export const FRAME: Area = { x: 16, y: 8, width: 273, height: 191 };
/** mm between the frame and what stands in it. */
export const INSET = 3;

export interface Lettering {
  /** mm, the em. */
  readonly size?: number;
  readonly bold?: boolean;
  readonly fill?: FillName;
  readonly align?: 'left' | 'center' | 'right';
}

const takeFont = (doc: Doc, { size = 2.6, bold = false }: Lettering): void => {
  doc.font(bold ? BOLD_FONT : PLAIN_FONT).fontSize(size * K);
};

/** Height in mm of a paragraph set to a width. */
export const paragraphHeight = (doc: Doc, words: string, width: number, style: Lettering = {}): number => {
  takeFont(doc, style);
  return doc.heightOfString(words, { width: width * K, lineGap: 0.3 * K }) / K;
};

/** Writes a paragraph with its upper left corner at (x, y) mm and returns its height in mm. */
export const paragraph = (doc: Doc, words: string, x: number, y: number, width: number, style: Lettering = {}): number => {
  const height = paragraphHeight(doc, words, width, style);
  doc
    .fillColor(FILLS[style.fill ?? 'ink'])
    .text(words, x * K, y * K, { width: width * K, lineGap: 0.3 * K, align: style.align ?? 'left' });
  return height;
};

export const widthOf = (doc: Doc, words: string, style: Lettering = {}): number => {
  takeFont(doc, style);
  return doc.widthOfString(words) / K;
};

/** Least lettering on a sheet, mm. */
const LEAST = 1.9;

/** One line that is made smaller until it fits the width, and cut with dots when even the least lettering does not. */
export const line = (doc: Doc, words: string, x: number, y: number, width: number, style: Lettering = {}): void => {
  const asked = style.size ?? 2.6;
  const wide = widthOf(doc, words, style);
  const size = wide > width ? Math.max(LEAST, (asked * width) / wide) : asked;
  let shown = words;
  while (shown.length > 1 && widthOf(doc, shown, { ...style, size }) > width) shown = `${shown.slice(0, -2)}…`;
  const left =
    style.align === 'right' ? x + width - widthOf(doc, shown, { ...style, size }) :
    style.align === 'center' ? x + (width - widthOf(doc, shown, { ...style, size })) / 2 : x;
  takeFont(doc, { ...style, size });
  // smaller letters keep the asked line's base
  doc.fillColor(FILLS[style.fill ?? 'ink']).text(shown, left * K, (y + (asked - size) * 0.93) * K, { lineBreak: false });
};

const takePen = (doc: Doc, pen: PenName): void => {
  doc.undash().lineCap('butt').lineJoin('miter').lineWidth(PENS[pen].width * K).strokeColor(PENS[pen].stroke);
};

export const box = (doc: Doc, area: Area, pen: PenName = 'edge'): void => {
  takePen(doc, pen);
  doc.rect(area.x * K, area.y * K, area.width * K, area.height * K).stroke();
};

export const rule = (doc: Doc, x0: number, y0: number, x1: number, y1: number, pen: PenName = 'thin'): void => {
  takePen(doc, pen);
  doc.moveTo(x0 * K, y0 * K).lineTo(x1 * K, y1 * K).stroke();
};

/** A heading over a part of the sheet; returns the mm that it takes. */
export const heading = (doc: Doc, words: string, x: number, y: number, width: number): number => {
  line(doc, words, x, y, width, { size: 2.9, bold: true });
  return 4.4;
};

import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import { BOLD_FONT, PLAIN_FONT, POINTS_PER_MM } from './drawPicture.js';
import { type Doc, PAGE } from './paper.js';

/** The papers' lettering, embedded: the built-in fonts of the format lack signs that the sheets need. */
const fontFile = (name: string): string => createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);

/** An empty document of A4 lying, the papers' fonts embedded. */
export const openDocument = (title: string, who: string): Doc => {
  const doc = new PDFDocument({
    size: [PAGE.width * POINTS_PER_MM, PAGE.height * POINTS_PER_MM],
    margin: 0,
    bufferPages: true,
    autoFirstPage: false,
    lang: 'en',
    info: { Title: title, Author: who, Creator: 'Brakewright' },
  });
  doc.registerFont(PLAIN_FONT, fontFile('DejaVuSansCondensed'));
  doc.registerFont(BOLD_FONT, fontFile('DejaVuSansCondensed-Bold'));
  return doc;
};

/** Ends the document. */
export const bytesOf = (doc: Doc): Promise<Uint8Array> =>
  new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    doc.on('error', reject);
    doc.end();
  });

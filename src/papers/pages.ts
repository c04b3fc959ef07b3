import { type Area, type Doc, FRAME, INSET } from './paper.js';
import { STRIP, drawFrame } from './titleBlock.js';

export const INNER: Area = { x: FRAME.x + INSET, y: FRAME.y + INSET, width: FRAME.width - 2 * INSET, height: FRAME.height - 2 * INSET };

/** Sheets as they are begun: each has a name for its title strip. */
export interface Pages {
  readonly doc: Doc;
  /** Begins a sheet with its frame. */
  readonly begin: (name: string) => void;
  readonly names: readonly string[];
}

export const newPages = (doc: Doc): Pages => {
  const names: string[] = [];
  return {
    doc, names,
    begin: (name) => {
      doc.addPage();
      names.push(name);
      drawFrame(doc);
    },
  };
};

/** mm: the lowest that something over the title strip's whole width may reach. */
export const aboveStrip = (): number => FRAME.y + FRAME.height - STRIP.height - 2;

/** Columns of words from `y` down to the frame, clear of the strip at the lower right. */
export const columnsFrom = (y: number, count: number): Area[] => {
  const gap = 6;
  const width = (INNER.width - (count - 1) * gap) / count;
  const bottom = FRAME.y + FRAME.height - INSET;
  const strip = FRAME.x + FRAME.width - STRIP.width;
  return Array.from({ length: count }, (_, k): Area => {
    const x = INNER.x + k * (width + gap);
    const lowest = x + width > strip - 2 ? aboveStrip() : bottom;
    return { x, y, width, height: lowest - y };
  });
};

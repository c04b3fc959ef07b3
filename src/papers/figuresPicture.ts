import { type Item, type Picture, strokes, text } from './picture.js';
import { textWidth } from './textWidth.js';

/** A figure with what it is held against, and where that comes from. */
export interface FigureRow {
  readonly name: string;
  readonly first: string;
  readonly second: string;
  readonly source: string;
}

const NAME = 2.4;
const SOURCE = 2;
const LEADING = 1.25;
/** Shares of the width at which the two columns of figures end. */
const FIRST = 0.74;
/** mm between the rows, and the head's height. */
const GAP = 1.3;
const HEAD = 4.2;

/** Words set into lines of at most `width` mm. */
const wrapped = (words: string, size: number, width: number): string[] => {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const last = lines[lines.length - 1];
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
};

/** A small table of figures: two columns beside the name, the source under it. mm of paper. */
export const figuresPicture = (heads: readonly [string, string], rows: readonly FigureRow[], width: number, title: string): Picture => {
  const items: Item[] = [
    text([width * FIRST, NAME], heads[0], SOURCE, { anchor: 'end', bold: true }),
    text([width, NAME], heads[1], SOURCE, { anchor: 'end', bold: true }),
  ];
  let y = HEAD;
  for (const { name, first, second, source } of rows) {
    items.push(strokes('rule', [[[0, y - 0.9], [width, y - 0.9]]]));
    items.push(
      text([0, y + NAME * 0.9], name, NAME, { anchor: 'start' }),
      text([width * FIRST, y + NAME * 0.9], first, NAME, { anchor: 'end', bold: true }),
      text([width, y + NAME * 0.9], second, NAME, { anchor: 'end' }),
    );
    y += NAME * LEADING;
    for (const words of wrapped(source, SOURCE, width)) {
      items.push(text([0, y + SOURCE * 0.9], words, SOURCE, { anchor: 'start' }));
      y += SOURCE * LEADING;
    }
    y += GAP;
  }
  return { width, height: y, items, title };
};

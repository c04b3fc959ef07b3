import { drawPicture } from './drawPicture.js';
import { type Area, type Doc, type Lettering, heading, paragraph, paragraphHeight } from './paper.js';
import type { Picture } from './picture.js';

export interface Paragraph {
  readonly words: string;
  readonly style?: Lettering;
  /** Stands before the first line: a sign or a number. */
  readonly sign?: string;
  /** Stands to the right of the words, or under them where the column is narrow. */
  readonly picture?: Picture;
}

/** A heading and what stands under it. */
export interface Block {
  readonly heading: string;
  readonly paragraphs: readonly Paragraph[];
}

const SIGN = 4;
const AFTER_PARAGRAPH = 0.9;
const AFTER_BLOCK = 2;
const HEADING = 4.4;

/** mm of words that must be left beside a picture. */
const LEAST_WORDS = 50;
const BESIDE = 4;

interface Laid {
  readonly indent: number;
  readonly words: number;
  readonly wordsHeight: number;
  readonly beside: boolean;
  /** mm in all, with the air after it. */
  readonly height: number;
}

const lay = (doc: Doc, p: Paragraph, width: number): Laid => {
  const indent = p.sign === undefined ? 0 : SIGN * ((p.style?.size ?? 2.6) / 2.6);
  const beside = p.picture !== undefined && width - indent - p.picture.width - BESIDE >= LEAST_WORDS;
  const words = width - indent - (beside ? p.picture.width + BESIDE : 0);
  const wordsHeight = paragraphHeight(doc, p.words, words, p.style);
  const pictureHeight = p.picture?.height ?? 0;
  const height = beside ? Math.max(wordsHeight, pictureHeight) : wordsHeight + pictureHeight;
  return { indent, words, wordsHeight, beside, height: height + AFTER_PARAGRAPH };
};

/** mm: a paragraph that is higher is cut where its column ends, a lower one moves on whole. */
const MAY_BE_CUT = 40;
/** Lines that stand before a cut at least. */
const LEAST_LINES = 2;

/** A paragraph's two parts, cut where the words fill `room` mm of height; none where that is not to be. */
const cut = (doc: Doc, p: Paragraph, width: number, room: number): readonly Paragraph[] => {
  if (p.picture !== undefined) return [];
  const high = (words: string): number => paragraphHeight(doc, words.trimEnd(), width, p.style);
  const least = LEAST_LINES * high('x');
  const ends = [...p.words.matchAll(/\s+/g)].map(({ index, 0: gap }) => index + gap.length);
  /** How many of these ends, from the first on, leave what stands before them within the room. */
  const fitting = (all: readonly number[]): number => {
    let [yes, no] = [0, all.length + 1];
    while (no - yes > 1) {
      const middle = (yes + no) >> 1;
      if (high(p.words.slice(0, all[middle - 1])) <= room) yes = middle;
      else no = middle;
    }
    return yes;
  };
  const whole = fitting(ends);
  // words without a gap, wider than the column, are cut where its height ends
  const at = whole > 0 ? ends[whole - 1]! : fitting([...p.words].map((_, i) => i + 1));
  const [first, rest] = [p.words.slice(0, at).trimEnd(), p.words.slice(at)];
  if (at === 0 || high(first) < least) return [];
  return [{ ...p, words: first }, { ...p, words: rest, ...(p.sign === undefined ? {} : { sign: '' }) }];
};

/** What a paragraph is drawn by, and under which heading where it stands first in its column. */
type Put = (p: Paragraph, laid: Laid, column: Area, y: number) => void;
interface Pen {
  readonly put: Put;
  readonly head: (words: string, column: Area, y: number) => void;
}

/** Lays blocks into columns and says how many stand whole; ends early where `more` brings no further columns. */
const run = (doc: Doc, blocks: readonly Block[], columns: readonly Area[], more: () => readonly Area[], pen: Pen): number => {
  let left = [...columns];
  const take = (): Area | undefined => {
    if (left.length === 0) left = [...more()];
    return left.shift();
  };
  let column = take();
  if (!column) return 0;
  let { y } = column;
  for (const [whole, block] of blocks.entries()) {
    let headed = false;
    for (const paragraph of block.paragraphs) {
      let p = paragraph;
      for (let tries = 0; ; tries++) {
        const laid = lay(doc, p, column.width);
        const room = column.y + column.height - y - (headed ? 0 : HEADING);
        // what is not to be cut and finds no column high enough is written all the same once a fresh page is reached
        const stands = laid.height - AFTER_PARAGRAPH <= room || (tries > 8 && y === column.y);
        // a low paragraph moves on whole, unless it is begun already or the column holds nothing else
        const movesOn = p === paragraph && laid.height <= MAY_BE_CUT && y > column.y;
        const [now, rest] = stands ? [p] : movesOn ? [] : cut(doc, p, laid.words, room);
        if (now !== undefined) {
          if (!headed) {
            pen.head(p === block.paragraphs[0] ? block.heading : `${block.heading} (continued)`, column, y);
            y += HEADING;
            headed = true;
          }
          const put = lay(doc, now, column.width);
          pen.put(now, put, column, y);
          y += put.height;
        }
        if (stands) break;
        if (rest !== undefined) [p, tries] = [rest, 0];
        const next = take();
        if (!next) return whole;
        column = next;
        ({ y } = next);
        headed = false;
      }
    }
    y += AFTER_BLOCK;
  }
  return blocks.length;
};

/** How many of the blocks, from the first on, stand whole in these columns. */
export const fitCount = (doc: Doc, blocks: readonly Block[], columns: readonly Area[]): number =>
  run(doc, blocks, columns, () => [], { put: () => undefined, head: () => undefined });

/**
 * Fills columns with blocks, one after another; a block that does not fit goes on in the next column under its heading.
 * `more` gives further columns on a new page.
 */
export const flow = (doc: Doc, blocks: readonly Block[], columns: readonly Area[], more: () => readonly Area[]): void => {
  const further = (): readonly Area[] => {
    const fresh = more();
    if (fresh.length === 0) throw new Error('a new page brought no columns');
    return fresh;
  };
  run(doc, blocks, columns, further, {
    head: (words, column, y) => {
      heading(doc, words, column.x, y, column.width);
    },
    put: (p, laid, column, y) => {
      if (p.sign !== undefined && p.sign !== '') paragraph(doc, p.sign, column.x, y, laid.indent, { ...p.style, bold: true });
      paragraph(doc, p.words, column.x + laid.indent, y, laid.words, p.style);
      if (!p.picture) return;
      const [px, py] = laid.beside ? [column.x + column.width - p.picture.width, y] : [column.x, y + laid.wordsHeight];
      drawPicture(doc, p.picture, px, py);
    },
  });
};

import type { DayPlan } from '../../fit/index.js';
import type { Block, Paragraph } from '../flow.js';
import { type Doc, paragraphHeight } from '../paper.js';

/** mm: what is left out of the day stands over its order where it takes no more than this, else after it. */
const MOST_OVER = 40;
const BOLD = { size: 2.8, bold: true } as const;
const AFTER = 1;

/**
 * What is left out of a day, for its papers: `over` are sentences over the order, each of which is told in full where `width` mm has room for them and
 * else how many there are; `after` are blocks that then name them, with the reason.
 */
export const leftOut = (doc: Doc, { left, notRead }: Pick<DayPlan, 'left' | 'notRead'>, width: number): { readonly over: readonly string[]; readonly after: readonly Block[] } => {
  const kinds = [
    { heading: 'Not planned in', lines: left.map(({ part, words }) => `${part}. ${words}`) },
    { heading: 'Not read', lines: notRead.map(({ part, sentence }) => `${part}. ${sentence}`) },
  ].filter(({ lines }) => lines.length > 0);
  const each = kinds.flatMap(({ heading, lines }) => lines.map((words) => `⚠ ${heading}: ${words}`));
  if (each.reduce((sum, words) => sum + paragraphHeight(doc, words, width, BOLD) + AFTER, 0) <= MOST_OVER) return { over: each, after: [] };
  return {
    over: [`⚠ ${kinds.map(({ heading, lines }) => `${heading}: ${lines.length}`).join('. ')}. Each is named after the order, with its reason.`],
    after: kinds.map(({ heading, lines }) => ({ heading, paragraphs: lines.map((words): Paragraph => ({ words, sign: '⚠', style: { size: 2.4 } })) })),
  };
};

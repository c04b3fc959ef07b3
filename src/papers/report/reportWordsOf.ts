import { bewareWords } from './bewareWords.js';
import { howFiguresCame } from './figureKinds.js';
import type { ReportData } from './reportData.js';
import { takenForGranted } from './takenForGranted.js';
import { whyNotBlocks } from './whyNotBlocks.js';

/** Why machines do not make a part, as the report tells it: those with the same reasons under one heading. */
export interface WhyNot {
  readonly heading: string;
  readonly lines: readonly { readonly sign: string; readonly words: string }[];
}

/** What stands in words on the paper, for a page that says the same. */
export interface ReportWordsOf {
  /** For each part. */
  readonly why: readonly (readonly WhyNot[])[];
  readonly beware: ReturnType<typeof bewareWords>;
  readonly taken: readonly string[];
  readonly how: ReturnType<typeof howFiguresCame>;
}

export const reportWordsOf = (data: ReportData): ReportWordsOf => ({
  why: data.board.parts.map((_, p) => whyNotBlocks(data.board, p).map(({ heading, paragraphs }) => ({ heading, lines: paragraphs.map(({ sign = '', words }) => ({ sign, words })) }))),
  beware: bewareWords(data.board), taken: takenForGranted(data), how: howFiguresCame(),
});

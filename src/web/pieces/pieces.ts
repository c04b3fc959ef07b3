import type { ExpectedFigure, PieceDifference, PieceRecord } from '../../fit/index.js';
import type { MeasuredDeduction } from '../../forming/index.js';
import { figureTyped, twoReadings } from '../shop/figureTyped.js';

/** What GET /api/trials/:id/pieces answers (docs/api.md). */
export interface Pieces {
  readonly expected: readonly ExpectedFigure[];
  readonly tools: string;
  readonly records: readonly PieceRecord[];
  readonly differences: readonly PieceDifference[];
  readonly deductions: readonly MeasuredDeduction[];
}

/** A figure typed with a point or a comma; NaN where it is none or may mean two things. */
export const typedNumber = (text: string): number => {
  const value = figureTyped(text);
  return typeof value === 'number' ? value : Number.NaN;
};

/** Why there is no number in what was typed: one sentence. */
export const noNumber = (what: string, text: string): string => `${what}: ${twoReadings(text) ?? `"${text}" is no figure.`}`;

import type { ExpectedFigure, PieceDifference, PieceRecord } from '../../fit/index.js';
import type { MeasuredDeduction } from '../../forming/index.js';

/** What GET /api/trials/:id/pieces answers (docs/api.md). */
export interface Pieces {
  readonly expected: readonly ExpectedFigure[];
  readonly tools: string;
  readonly records: readonly PieceRecord[];
  readonly differences: readonly PieceDifference[];
  readonly deductions: readonly MeasuredDeduction[];
}

/** A figure typed with a point or a comma; NaN where it is none. */
export const typedNumber = (text: string): number => (text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.')));

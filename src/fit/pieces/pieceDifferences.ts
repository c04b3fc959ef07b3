import { type PieceFigure, type PieceRecord, standing } from './pieceEntry.js';

/** How measured pieces differ from the prediction in one figure. */
export interface PieceDifference extends Omit<PieceFigure, 'measured'> {
  readonly count: number;
  /** Measured less predicted. */
  readonly mean: number;
  /** Standard deviation of the sample about its own mean; null for a single piece. */
  readonly deviation: number | null;
  readonly least: number;
  readonly most: number;
  /** How many lie within the tolerance; null where none is asked. */
  readonly within: number | null;
}

/** Rounding in the last digit of a typed figure must not put it out of its tolerance. mm or degrees */
const TYPED = 1e-9;

/** Whether what was measured lies within the tolerance asked; null where none is. */
export const withinTolerance = ({ measured, predicted, drawn = predicted, tolerance }: Pick<PieceFigure, 'measured' | 'predicted' | 'drawn' | 'tolerance'>): boolean | null =>
  (tolerance === null ? null : Math.abs(measured - drawn) <= tolerance + TYPED);

/** Measured less predicted for every figure that was measured, over the records that stand. */
export const pieceDifferences = (records: readonly PieceRecord[]): readonly PieceDifference[] => {
  const figures = standing(records).flatMap(({ entry }) => (entry.kind === 'piece' ? entry.figures : []));
  const byId = new Map<string, PieceFigure[]>();
  for (const figure of figures) byId.set(figure.id, [...(byId.get(figure.id) ?? []), figure]);
  return [...byId.values()].map((all): PieceDifference => {
    const { measured: _, ...what } = all[0]!;
    const off = all.map(({ measured, predicted }) => measured - predicted);
    const mean = off.reduce((a, b) => a + b, 0) / off.length;
    const deviation = off.length < 2 ? null : Math.sqrt(off.reduce((sum, d) => sum + (d - mean) ** 2, 0) / (off.length - 1));
    return {
      ...what, count: off.length, mean, deviation, least: Math.min(...off), most: Math.max(...off),
      within: what.tolerance === null ? null : all.filter(withinTolerance).length,
    };
  });
};

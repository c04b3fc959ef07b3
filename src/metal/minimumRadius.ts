import type { Grain, Metal, Source } from './metal.js';

/** DIN 6935:1975-10: [thickness over, up to, radius for Rm <= 390, 390 to 490, 490 to 640 MPa], mm. Across the grain. */
const steelRows: readonly (readonly [number, number, number, number, number])[] = [
  [0, 1, 1, 1.2, 1.6],
  [1, 1.5, 1.6, 2, 2.5],
  [1.5, 2.5, 2.5, 3, 4],
  [2.5, 3, 3, 4, 5],
  [3, 4, 5, 5, 6],
  [4, 5, 6, 8, 8],
  [5, 6, 8, 10, 10],
  [6, 7, 10, 12, 12],
  [7, 8, 12, 16, 16],
  [8, 10, 16, 20, 20],
  [10, 12, 20, 25, 25],
  [12, 14, 25, 28, 32],
  [14, 16, 28, 32, 36],
  [16, 18, 36, 40, 45],
  [18, 20, 40, 45, 50],
];

/** Strengths up to which the three columns hold, MPa. */
const steelColumns = [390, 490, 640] as const;

/** Bends over this angle take the next thicker row (DIN 6935), degrees. */
const ROW_CHANGE_ANGLE = 120;

export interface MinimumRadius extends Source {
  /** mm, inside. */
  readonly radius: number;
}

/** The steel table itself; null where it does not reach (over 20 mm, over 640 MPa). */
export const steelMinimumRadius = (
  tensile: number,
  thickness: number,
  grain: Grain,
  bendAngle: number,
): number | null => {
  const column = steelColumns.findIndex((limit) => tensile <= limit);
  if (column < 0) return null;
  let row = steelRows.findIndex(([over, upTo]) => thickness > over && thickness <= upTo);
  if (row < 0) return null;
  if (grain === 'along' || bendAngle > ROW_CHANGE_ANGLE) row++;
  return steelRows[row]?.[column + 2] ?? null;
};

/**
 * Smallest inside radius for a bend of this metal, mm, with its source; null where no figure reaches (then a trial
 * bend must tell). `bendAngle` in degrees counts in the steel table only.
 *
 * @example minimumRadius(metalById('s235jr')!, 2, 'across', 90)?.radius // 3, DIN 6935 for 390 to 490 MPa
 */
export const minimumRadius = (metal: Metal, thickness: number, grain: Grain, bendAngle: number): MinimumRadius | null => {
  const rule = metal.minRadius;
  const source = { mark: rule.mark, source: rule.source };
  switch (rule.kind) {
    case 'steel table': {
      const radius = steelMinimumRadius(metal.tensile.typical, thickness, grain, bendAngle);
      return radius === null ? null : { radius, ...source };
    }
    case 'factor':
      return { radius: rule[grain] * thickness, ...source };
    case 'rows': {
      const factor = rowFactor(rule.rows, thickness);
      return { radius: factor * thickness * (grain === 'along' ? rule.alongFactor : 1), ...source };
    }
  }
};

/** The row that the thickness falls in; past the last row its factor. */
const rowFactor = (rows: readonly (readonly [number, number])[], thickness: number): number =>
  (rows.find(([upTo]) => thickness <= upTo) ?? rows[rows.length - 1]!)[1];

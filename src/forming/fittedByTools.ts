import type { Metal } from '../metal/index.js';
import { airBend } from './airBend.js';
import { type FittedK, type MeasuredDeduction, fittedK } from './deductionTable.js';

/** Measured rows of one metal and the same tools, with the K that they tell. */
export interface FittedTools {
  readonly rows: readonly MeasuredDeduction[];
  /** Null where a row has no measured radius and no calculation gives one. */
  readonly k: FittedK | null;
}

/** What rows must share to be of the same tools. */
const toolsOf = ({ metal, thickness, v, vConvention, tipRadius }: MeasuredDeduction): string => [metal, thickness, v, vConvention, tipRadius].join(' ');

/**
 * The inside radius that the calculation gives for a row that has none: the die's angle and shoulder are not in the table,
 * so they are taken as usual (an eighth of the V, an angle that lets it bend); K hardly depends on them.
 */
const radiusOf = (row: MeasuredDeduction, metal: Metal | undefined): number | null => {
  if (metal === undefined) return null;
  const result = airBend({
    metal, thickness: row.thickness, v: row.v, vConvention: row.vConvention, tipRadius: row.tipRadius, bendAngle: row.bendAngle, dieAngle: 30, shoulderRadius: row.v / 8,
  });
  return result.ok ? result.value.insideRadius : null;
};

/** A shop's measured rows by metal and tools, in the order they first come, each with its fitted K and spread. `metalOf` finds a metal by id. */
export const fittedByTools = (rows: readonly MeasuredDeduction[], metalOf: (id: string) => Metal | undefined): readonly FittedTools[] =>
  [...new Set(rows.map(toolsOf))].map((tools) => {
    const mine = rows.filter((row) => toolsOf(row) === tools);
    const radii = new Map(mine.map((row) => [row, row.insideRadius ?? radiusOf(row, metalOf(row.metal))]));
    return { rows: mine, k: [...radii.values()].includes(null) ? null : fittedK(mine, (row) => radii.get(row)!) };
  });

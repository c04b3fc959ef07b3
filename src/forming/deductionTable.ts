import { allowanceFrom, deductionFrom, kFactorOf } from './allowance.js';
import type { AirBend } from './airBendTypes.js';
import type { VConvention } from './vee.js';

/** A deduction that the shop measured: pieces of one metal, thickness, V and tip, at one bend angle. mm, degrees. */
export interface MeasuredDeduction {
  readonly metal: string;
  readonly thickness: number;
  readonly v: number;
  readonly vConvention: VConvention;
  readonly tipRadius: number;
  readonly bendAngle: number;
  /** Outside lengths less flat length; to the mould lines up to 90 degrees of bend angle, to the outer tangents above. */
  readonly deduction: number;
  /** Inside radius as measured, where it was. */
  readonly insideRadius?: number;
  /** Pieces measured, and half of what lay between the greatest and the least. */
  readonly pieces: number;
  readonly spread: number;
  readonly note: string;
}

/** What a bend is looked up by. */
export type DeductionQuery = Pick<MeasuredDeduction, 'metal' | 'thickness' | 'v' | 'vConvention' | 'tipRadius' | 'bendAngle'>;

/** K-factors that fit measured rows. */
export interface FittedK {
  readonly k: number;
  readonly min: number;
  readonly max: number;
  readonly rows: number;
}

/** The deduction to use, and on what it rests. */
export interface DeductionAnswer {
  readonly deduction: number;
  readonly allowance: number;
  /** 'measured' overrides everything; 'fitted K' from rows of the same tools at other angles; else the strip. */
  readonly source: 'measured' | 'fitted K' | 'strip';
  /** mm, plus and minus; null where nothing was measured. */
  readonly spread: number | null;
  readonly words: string;
}

/** Rows whose figures agree with the query's to this are of the same tools: tables are typed to two decimals. */
const SAME_LENGTH = 0.005;
const SAME_ANGLE = 0.5;

const sameTools = (row: MeasuredDeduction, q: DeductionQuery): boolean =>
  row.metal === q.metal &&
  row.vConvention === q.vConvention &&
  Math.abs(row.thickness - q.thickness) <= SAME_LENGTH &&
  Math.abs(row.v - q.v) <= SAME_LENGTH &&
  Math.abs(row.tipRadius - q.tipRadius) <= SAME_LENGTH;

/** K of each row with the radius measured, or else the one given for it. */
export const fittedK = (rows: readonly MeasuredDeduction[], radiusOf: (row: MeasuredDeduction) => number): FittedK | null => {
  if (rows.length === 0) return null;
  const ks = rows.map((row) => {
    const radius = row.insideRadius ?? radiusOf(row);
    return kFactorOf(allowanceFrom(row.deduction, radius, row.thickness, row.bendAngle), radius, row.thickness, row.bendAngle);
  });
  const weight = rows.reduce((sum, row) => sum + row.pieces, 0);
  return {
    k: ks.reduce((sum, k, i) => sum + k * rows[i]!.pieces, 0) / weight,
    min: Math.min(...ks),
    max: Math.max(...ks),
    rows: rows.length,
  };
};

/**
 * The deduction of a bend: the shop's measured one where the table has it; for other angles of the same tools by the K
 * that fits their rows; else the strip's.
 */
export const deductionFor = (table: readonly MeasuredDeduction[], query: DeductionQuery, strip: AirBend): DeductionAnswer => {
  const rows = table.filter((row) => sameTools(row, query));
  const exact = rows.filter((row) => Math.abs(row.bendAngle - query.bendAngle) <= SAME_ANGLE);
  const { insideRadius } = strip;
  if (exact.length > 0) {
    const pieces = exact.reduce((sum, row) => sum + row.pieces, 0);
    const deduction = exact.reduce((sum, row) => sum + row.deduction * row.pieces, 0) / pieces;
    const spread = Math.max(...exact.map((row) => Math.abs(row.deduction - deduction) + row.spread));
    return {
      deduction, spread, source: 'measured',
      allowance: allowanceFrom(deduction, insideRadius, query.thickness, query.bendAngle),
      words: `measured on ${pieces} piece${pieces === 1 ? '' : 's'}, plus and minus ${spread.toFixed(2)} mm`,
    };
  }
  const fitted = fittedK(rows, () => insideRadius);
  if (fitted !== null) {
    const angle = (query.bendAngle * Math.PI) / 180;
    const allowance = angle * (insideRadius + fitted.k * query.thickness);
    return {
      allowance, source: 'fitted K',
      deduction: deductionFrom(allowance, insideRadius, query.thickness, query.bendAngle),
      spread: (angle * query.thickness * (fitted.max - fitted.min)) / 2,
      words: `K ${fitted.k.toFixed(3)} (${fitted.min.toFixed(3)} to ${fitted.max.toFixed(3)}) fitted to ${fitted.rows} row${fitted.rows === 1 ? '' : 's'} of these tools at other angles`,
    };
  }
  return {
    deduction: strip.deduction, allowance: strip.allowance, source: 'strip', spread: null,
    words: 'nothing measured with this metal and these tools: by the strip calculation',
  };
};

/** The table with more rows: one of the same tools, bend angle and note gives way to the newer one. */
export const withDeductions = (table: readonly MeasuredDeduction[], more: readonly MeasuredDeduction[]): readonly MeasuredDeduction[] => {
  const same = (a: MeasuredDeduction, b: MeasuredDeduction): boolean => sameTools(a, b) && Math.abs(a.bendAngle - b.bendAngle) <= SAME_ANGLE && a.note === b.note;
  return [...table.filter((row) => !more.some((newer) => same(row, newer))), ...more];
};

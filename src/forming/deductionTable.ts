import { allowanceFrom, deductionFrom, kFactorOf } from './allowance.js';
import type { AirBend } from './airBendTypes.js';
import { deductionLimit } from './deductionLimit.js';
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
  /** mm, plus and minus; null where nothing was measured, or a single piece. */
  readonly spread: number | null;
  readonly words: string;
  /** Where what was measured is too far from the calculated to be believed: a sentence with both. */
  readonly beware?: string;
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

/** mm, plus and minus; a single piece has none, unless somebody wrote one down. */
export const spreadOf = ({ pieces, spread }: Pick<MeasuredDeduction, 'pieces' | 'spread'>): number | null => (pieces === 1 && spread === 0 ? null : spread);

const bewareOf = (measured: number, calculated: number, { thickness, v, bendAngle }: DeductionQuery): Pick<DeductionAnswer, 'beware'> =>
  Math.abs(measured - calculated) <= deductionLimit(thickness) ? {} : {
    beware: `The shop's measured deduction for ${thickness.toFixed(2)} mm over V ${v.toFixed(1)} at a bend angle of ${bendAngle.toFixed(1)} degrees is ${measured.toFixed(2)} mm, the calculated one ${calculated.toFixed(2)} mm: measure a strip again before a blank is cut.`,
  };

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
 * that fits their rows; else the strip's. Too far from the strip's it is taken all the same and told to beware of.
 */
export const deductionFor = (table: readonly MeasuredDeduction[], query: DeductionQuery, strip: AirBend): DeductionAnswer => {
  const rows = table.filter((row) => sameTools(row, query));
  const exact = rows.filter((row) => Math.abs(row.bendAngle - query.bendAngle) <= SAME_ANGLE);
  const { insideRadius } = strip;
  if (exact.length > 0) {
    const pieces = exact.reduce((sum, row) => sum + row.pieces, 0);
    const deduction = exact.reduce((sum, row) => sum + row.deduction * row.pieces, 0) / pieces;
    const between = Math.max(...exact.map((row) => Math.abs(row.deduction - deduction) + row.spread));
    const spread = spreadOf({ pieces, spread: between });
    return {
      deduction, spread, source: 'measured', ...bewareOf(deduction, strip.deduction, query),
      allowance: allowanceFrom(deduction, insideRadius, query.thickness, query.bendAngle),
      words: `measured on ${pieces} piece${pieces === 1 ? '' : 's'}, ${spread === null ? 'spread not known' : `plus and minus ${spread.toFixed(2)} mm`}`,
    };
  }
  const fitted = fittedK(rows, () => insideRadius);
  if (fitted !== null) {
    const angle = (query.bendAngle * Math.PI) / 180;
    const allowance = angle * (insideRadius + fitted.k * query.thickness);
    const deduction = deductionFrom(allowance, insideRadius, query.thickness, query.bendAngle);
    return {
      allowance, source: 'fitted K', deduction, ...bewareOf(deduction, strip.deduction, query),
      spread: rows.length === 1 ? spreadOf(rows[0]!) : (angle * query.thickness * (fitted.max - fitted.min)) / 2,
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

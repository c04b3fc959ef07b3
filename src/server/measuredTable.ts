import { z } from 'zod';
import type { MeasuredDeduction } from '../forming/index.js';
import type { DataFault, Result } from '../shop/index.js';

/** The one entry of its kind in the shop's records. */
export const MEASURED_ID = 'measured';

/** Rows that a table may have: far more than a shop measures in a lifetime. */
const MOST_ROWS = 10_000;

const mm = z.number().positive().max(12_000);
const row = z.strictObject({
  metal: z.string().min(1).max(100), thickness: mm, v: mm, vConvention: z.enum(['sharp', 'tangent']), tipRadius: mm, bendAngle: z.number().gt(0).lt(180),
  deduction: z.number().min(-12_000).max(12_000), insideRadius: z.number().min(0).max(12_000).exactOptional(), pieces: z.int().positive(), spread: z.number().min(0),
  note: z.string().max(1000),
});
const table = z.strictObject({ rows: z.array(row).max(MOST_ROWS) });

export interface MeasuredTable {
  readonly id: string;
  readonly name: string;
  readonly demo: boolean;
  readonly rows: readonly MeasuredDeduction[];
}

/** The shop's measured deductions as they are kept: `{ rows }`. */
export const parseMeasured = (data: unknown): Result<MeasuredTable, DataFault> => {
  const read = table.safeParse(data);
  if (read.success) return { ok: true, value: { id: MEASURED_ID, name: 'Measured deductions', demo: false, rows: read.data.rows } };
  const { path, message } = read.error.issues[0]!;
  const field = path.map(String).join('.');
  return { ok: false, fault: { code: 'shape', entry: MEASURED_ID, field, sentence: `Measured deductions, ${field}: ${message}.` } };
};

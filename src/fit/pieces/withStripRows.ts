import { type MeasuredDeduction, withDeductions } from '../../forming/index.js';

/** How the note of a row begins that the strips of this trial tell; it names them whatever they measured. */
export const stripsOf = (trialId: string): string => `test strips of trial ${trialId}`;

const trialIn = ({ note }: MeasuredDeduction): string | undefined => /^test strips of trial ([^,]+),/.exec(note)?.[1];

/**
 * The table with these rows taken in. All that strips of the same trials told before for the same metal gives way: a strip put right since, or
 * one more of them, is counted once.
 */
export const withStripRows = (table: readonly MeasuredDeduction[], rows: readonly MeasuredDeduction[]): readonly MeasuredDeduction[] => {
  const keyOf = (row: MeasuredDeduction): string | undefined => (trialIn(row) === undefined ? undefined : `${row.metal} ${trialIn(row)!}`);
  const again = new Set(rows.map(keyOf).filter((key) => key !== undefined));
  return withDeductions(table.filter((row) => !again.has(keyOf(row) ?? '')), rows);
};

import { type FitBoard, type FitCell, type FitMargin, VERDICT_SIGNS, columnName } from '../../fit/index.js';
import { type Units, forceText, lengthText, roundText } from '../format.js';

export const percent = (share: number): string => `${(share * 100).toFixed(0)} %`;
export const verdictWords = ({ verdict }: Pick<FitCell, 'verdict'>): string => `${VERDICT_SIGNS[verdict]} ${verdict}`;

/** The columns' names up to their first comma where these tell them apart, else whole: for sentences that name several. */
export const shortNames = (machines: FitBoard['machines']): readonly string[] => {
  const whole = machines.map(columnName);
  const short = machines.map((machine) => columnName({ ...machine, name: machine.name.split(',')[0]! }));
  return new Set(short).size === short.length ? short : whole;
};

const amount = (value: number, unit: string, units: Units): string =>
  unit === 'N' ? forceText(value, units) : unit === 'mm' ? (Math.abs(value) < 10 ? lengthText(value, units) : roundText(value, units)) : `${value.toFixed(0)} ${unit}`;

/** "682 kN of 1,100 kN", "R at 90 mm, nearest 5 mm": both with their unit. */
export const marginAmounts = ({ kind, name, value, limit, unit }: FitMargin, units: Units): string => {
  const [is, bound] = [amount(value, unit, units), amount(limit, unit, units)];
  const [axis, end] = name.split(', ');
  return kind === 'gauge travel' && end !== undefined ? `${axis} at ${is}, ${end} ${bound}` : `${is} of ${bound}`;
};

/** "105 an hour running, change-over 14 min", each with its mark; empty without a plan. */
export const paceWords = ({ partsAnHour, changeOver }: FitCell, marks: readonly [string, string]): string => [
  ...(partsAnHour === null ? [] : [`${partsAnHour < 10 ? partsAnHour.toFixed(1) : partsAnHour.toFixed(0)} an hour ${marks[0]}`]),
  ...(changeOver === null ? [] : [`change-over ${(changeOver / 60).toFixed(0)} min ${marks[1]}`]),
].join('\n');

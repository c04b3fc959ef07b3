import { type DayPlan, type DayStop, layoutInWords as sayLayout } from '../../fit/index.js';
import { type Units, lengthText, roundText } from '../format.js';

const DOES: Readonly<Record<DayStop['changes'][number]['what'], string>> = { stays: 'stays', altered: 'alter', built: 'build', 'taken off': 'take off' };

/** What is done to the bed before a part, a line each. */
export const changesInWords = ({ changes }: DayStop): string =>
  changes.map(({ what, station, kind, name }) => (what === 'stays' ? `${station} ${kind} stays` : `${DOES[what]} ${station} ${kind}: ${name}`)).join('\n');

/** "2 + 1 spare, 200.00 by 154.60 mm". */
export const blanksInWords = ({ blanks: { length, width, thickness, pieces, spares } }: DayStop, units: Units): string => {
  const size = length === null || width === null ? 'by its drawing' : `${lengthText(length, units)} by ${lengthText(width, units)}`;
  return `${pieces} + ${spares} ${spares === 1 ? 'spare' : 'spares'}, ${size}, ${lengthText(thickness, units)} thick`;
};

/** A line for each size of strip. */
export const stripsInWords = ({ strips }: DayStop): string => {
  if (strips.length === 0) return 'none: as for a part before it';
  const sizes = new Map<string, number>();
  for (const { along, across, bends } of strips) sizes.set(`${along.toFixed(0)} by ${across.toFixed(0)} mm`, (sizes.get(`${along.toFixed(0)} by ${across.toFixed(0)} mm`) ?? 0) + bends.length);
  return [...sizes].map(([size, count]) => `${count} of ${size}`).join('\n');
};

/** The layout of the day in one sentence, in these units. */
export const layoutInWords = (layout: NonNullable<DayPlan['layout']>, plan: Pick<DayPlan, 'stops' | 'left'>, units: Units): string => sayLayout(layout, plan, (mm) => roundText(mm, units));

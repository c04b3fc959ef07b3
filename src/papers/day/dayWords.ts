import { type DayPlan, type DayStop, layoutInWords as sayLayout, stripsInWords as sayStrips } from '../../fit/index.js';
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
export const stripsInWords = (stop: DayStop): string => sayStrips(stop).join('\n') || 'none: as for a part before it';

/** The layout of the day in one sentence, in these units. */
export const layoutInWords = (layout: NonNullable<DayPlan['layout']>, plan: Pick<DayPlan, 'stops' | 'left'>, units: Units): string => sayLayout(layout, plan, (mm) => roundText(mm, units));

import type { DayPlan, DayStop } from '../../fit/index.js';
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

/** "All parts on one layout: 415 mm of 2000 mm of bed, proven the least of its model." */
export const layoutInWords = ({ length, bound, proven, bed }: NonNullable<DayPlan['layout']>, { stops, left }: Pick<DayPlan, 'stops' | 'left'>, units: Units): string =>
  `${left.length === 0 ? 'All parts' : stops.length === 1 ? '1 part' : `The ${stops.length} parts that are made`} on one layout: ${roundText(length, units)} of ${roundText(bed, units)} of bed, ${proven ? 'proven the least of its model' : `the best found; none of its model is shorter than ${roundText(bound, units)}`}.`;

/** Which part is made on which station, a line each. */
export const stationsInWords = ({ stations }: NonNullable<DayPlan['layout']>): readonly string[] =>
  stations.map(({ station, parts }) => `${station}: ${parts.map(({ part, steps }) => `${part}, ${steps.length === 1 ? 'step' : 'steps'} ${steps.join(', ')}`).join('; ')}`);

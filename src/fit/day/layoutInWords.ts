import type { DayPlan } from './dayPlan.js';

type Layout = NonNullable<DayPlan['layout']>;

/** "All parts on one layout: 415 mm of 2000 mm of bed, proven the least of its model."; `length` says mm as they are to be shown, with their unit. */
export const layoutInWords = ({ length: taken, bound, proven, bed }: Layout, { stops, left }: Pick<DayPlan, 'stops' | 'left'>, length: (mm: number) => string): string =>
  `${left.length === 0 ? 'All parts' : stops.length === 1 ? '1 part' : `The ${stops.length} parts that are made`} on one layout: ${length(taken)} of ${length(bed)} of bed, ${proven ? 'proven the least of its model' : `the best found; none of its model is shorter than ${length(bound)}`}.`;

/** Said wherever parts stand on one layout: nobody may bend by the plan of the part's own trial. */
export const PLANNED_ANEW = 'Each part is planned anew for this layout: tools, blank, stops and depths may be other ones than those of its own trial, so its walk and set-up sheet do not hold here.';

/** Which part is made on which station, a line each. */
export const stationsInWords = ({ stations }: Pick<Layout, 'stations'>): readonly string[] =>
  stations.map(({ station, parts }) => `${station}: ${parts.map(({ part, steps }) => `${part}, ${steps.length === 1 ? 'step' : 'steps'} ${steps.join(', ')}`).join('; ')}`);

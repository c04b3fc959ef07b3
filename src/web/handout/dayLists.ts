import { MOST_PARTS } from '../../fit/index.js';

export interface DayList {
  /** How many of them are made. */
  readonly made: number;
  readonly trials: readonly string[];
}

/**
 * The trials of one machine as days that can be planned: no more than `most` in one, those that are made spread evenly, and as many of the others as have
 * room at the end of each, whose page tells what would make them. None where nothing is made.
 *
 * @example dayLists(['t1', 't2', 't3'], ['t4'], 2) // [{ made: 2, trials: ['t1', 't2'] }, { made: 1, trials: ['t3', 't4'] }]
 */
export const dayLists = (made: readonly string[], others: readonly string[], most = MOST_PARTS): readonly DayList[] => {
  const days = Math.ceil(made.length / most);
  const each = Math.ceil(made.length / Math.max(1, days));
  let waiting = others;
  return Array.from({ length: days }, (_, day) => {
    const here = made.slice(day * each, (day + 1) * each);
    const along = waiting.slice(0, most - here.length);
    waiting = waiting.slice(along.length);
    return { made: here.length, trials: [...here, ...along] };
  });
};

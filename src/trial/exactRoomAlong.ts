import type { Interval } from '../geometry/index.js';
import type { Conflict } from './conflict.js';
import { exactDepth } from './exactDepth.js';
import { BASE_ALLOWANCE } from './limits.js';
import type { Setting } from './setting.js';

/** Halvings of the allowance: to a thousandth of a millimetre. */
const HALVINGS = 10;

/**
 * For a plate that stands beside the tools, over none of what the bend needs, but nearer to their end than the allowance: the room left along
 * the bed as a depth of at most 0, mm. Null where it is no such conflict.
 */
export const exactRoomAlong = (setting: Setting, conflict: Conflict, need: Interval): number | null => {
  const meetsWithin = (room: number): boolean => (exactDepth(setting, conflict, [need[0] - room, need[1] + room], true) ?? -1) > 0;
  let [clear, met] = [0, BASE_ALLOWANCE];
  if (!meetsWithin(met)) return null;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (clear + met) / 2;
    if (meetsWithin(middle)) met = middle;
    else clear = middle;
  }
  return -met;
};

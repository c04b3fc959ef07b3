import type { Interval } from '../geometry/index.js';
import { type Machine, NO_GAIN, seatsLeft, worthMoving } from '../shop/index.js';
import type { SeatsLeft } from './errorSources.js';
import type { Layout } from './layout.js';
import type { Planned } from './task.js';

/** mm between the places that are tried for the row of stations. */
const STEP = 25;

/** Where the row of stations is moved to along the bed: windows of the steps at 0, how far it may go, where it would stand. mm, whole */
export type Settle = (windows: readonly Interval[], least: number, most: number, wished: number) => number;

/** Moves the row, where that is worth it, to where wear of the seats leaves least at the step that has most of it; of equals, the nearest to where it would stand. */
export const settleBySeats = (machine: Machine): Settle => (windows, least, most, wished) => {
  const worst = (shift: number): number =>
    (seatsLeft(machine, windows.map(([a, b]) => [a + shift, b + shift])) ?? []).reduce<number>((most, left) => Math.max(most, left ?? Infinity), 0);
  const stayed = { shift: wished, left: worst(wished) };
  let best = stayed;
  for (let away = STEP; wished - away >= least || wished + away <= most; away += STEP) {
    for (const shift of [wished - away, wished + away]) {
      if (shift < least || shift > most) continue;
      const left = worst(shift);
      if (left < best.left - NO_GAIN) best = { shift, left };
    }
  }
  return (worthMoving(stayed.left, best.left) ? best : stayed).shift;
};

const ids = ({ option: { setting: { group, sheet } } }: Planned): string => group.bends.map((b) => sheet.part.bends[b]!.id).join('+');

const windowsOf = ({ plan, placements }: Layout): readonly Interval[] =>
  plan.map(({ option: { line } }, i): Interval => [line[0] + placements[i]!.origin, line[1] + placements[i]!.origin]);

/** What wear leaves of each step where its station stands, by the step's bends; undefined on a machine without a map. */
export const seatsStanding = (machine: Machine, layout: Layout): ReadonlyMap<string, SeatsLeft> | undefined => {
  const windows = windowsOf(layout);
  const left = seatsLeft(machine, windows);
  return left && new Map(layout.plan.map((step, i) => [ids(step), {
    half: left[i]!, mark: left[i] === null ? 'not known so far along the bed' : `measured; from ${windows[i]![0].toFixed(0)} to ${windows[i]![1].toFixed(0)} mm of the bed's middle`,
  }]));
};

/** In words, when the row stands away from the middle for its seats' sake: where, and what that avoids. */
export const movedWords = (machine: Machine, layout: Layout): string | null => {
  const windows = windowsOf(layout);
  const here = seatsLeft(machine, windows);
  if (!here || windows.length === 0) return null;
  const middle = (Math.min(...windows.map(([a]) => a)) + Math.max(...windows.map(([, b]) => b))) / 2;
  const there = seatsLeft(machine, windows.map(([a, b]) => [a - middle, b - middle]))!;
  const worst = (lefts: readonly (number | null)[]): number => lefts.reduce<number>((most, left) => Math.max(most, left ?? Infinity), 0);
  if (!worthMoving(worst(there), worst(here))) return null;
  const avoided = Number.isFinite(worst(there)) ? `plus or minus ${worst(there).toFixed(3)} mm` : 'wear that was not measured';
  return `The stations stand ${Math.abs(middle).toFixed(0)} mm to the ${middle < 0 ? 'left' : 'right'} of the bed's middle: there the worn seats leave plus or minus ${worst(here).toFixed(3)} mm of depth along a bend, in the middle ${avoided}.`;
};

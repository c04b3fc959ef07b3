import type { Machine } from './machine.js';
import { type Following, type SeatFit, type Window, leftUnder, seatFit } from './seatFit.js';

/** mm of wear in which two places are alike: the nearer is taken. */
export const NO_GAIN = 0.002;
/** mm of wear that is worth leaving the middle of the bed for: what a dial gauge reads. Common practice, no source. */
const WORTH_MOVING = 0.01;
/** mm between the places that are tried for a station. */
const STEP = 10;

export interface BestPlace {
  readonly window: Window;
  readonly fit: SeatFit;
}

/** What follows the wear for each step by itself, and what is set once for all stations. */
const followingOf = ({ seats, crowning }: Machine): { readonly each: Following; readonly all: Following } => {
  const tilt = seats?.source === 'measured' ? seats.tilt : 'none';
  return {
    each: { tilt: tilt === 'each step', crowning: crowning === 'powered' },
    all: { tilt: tilt !== 'none', crowning: crowning !== 'none' },
  };
};

/**
 * mm, plus and minus, that wear leaves of the depth in each of these windows with one set-up: what is powered is set for each step,
 * what is set by hand once for all of them. Null where a window reaches past what was measured; undefined on a machine without a map.
 */
export const seatsLeft = (machine: Machine, windows: readonly Window[]): readonly (number | null)[] | undefined => {
  const { seats } = machine;
  if (seats?.source !== 'measured') return undefined;
  const { each, all } = followingOf(machine);
  const hull: Window = [Math.min(...windows.map(([from]) => from)), Math.max(...windows.map(([, to]) => to))];
  const shared = seatFit(machine, seats, hull, all);
  return windows.map((window) => {
    const own = seatFit(machine, seats, window, each);
    const common = shared && leftUnder(machine, seats, window, shared);
    const lefts = [own?.left, common].filter((left): left is number => left !== null && left !== undefined);
    return lefts.length === 0 ? null : Math.min(...lefts);
  });
};

/** Is it worth to leave a place where wear leaves `from` for one where it leaves `to`? mm, infinite where it was not measured */
export const worthMoving = (from: number, to: number): boolean => from - to >= WORTH_MOVING;

const best = new WeakMap<Machine, Map<number, BestPlace | null>>();

/** The place along the bed where a piece of this length meets least wear, the nearest to the middle of equals; null where none was measured. */
export const bestPlace = (machine: Machine, length: number): BestPlace | null => {
  const { seats } = machine;
  if (seats?.source !== 'measured') return null;
  const known = best.get(machine) ?? new Map<number, BestPlace | null>();
  best.set(machine, known);
  const before = known.get(length);
  if (before !== undefined) return before;
  const { all } = followingOf(machine);
  const room = Math.max(0, machine.length - length) / 2;
  let found: BestPlace | null = null;
  let inTheMiddle: BestPlace | null = null;
  for (let k = 0; k <= Math.floor(room / STEP); k++) {
    for (const middle of k === 0 ? [0] : [-k * STEP, k * STEP]) {
      const window: Window = [middle - length / 2, middle + length / 2];
      const fit = seatFit(machine, seats, window, all);
      if (fit && (!found || fit.left < found.fit.left - NO_GAIN)) found = { window, fit };
      if (middle === 0) inTheMiddle = found;
    }
  }
  const place = inTheMiddle && found && !worthMoving(inTheMiddle.fit.left, found.fit.left) ? inTheMiddle : found;
  known.set(length, place);
  return place;
};

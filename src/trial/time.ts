import type { Machine } from '../shop/index.js';
import type { TimePiece } from './trial.js';
import type { Way } from './ways.js';

/**
 * The stated time model. Handling figures are common practice, no source; they rank plans and make no promise. Seconds.
 */
export const TIME = {
  /** Bring the sheet to the gauge for one bend. */
  seat: 3,
  /** Added to every handling per 100 mm of the blank's longest side over 300 mm, and per kg over 5 kg. */
  perHundredOver300: 0.5,
  perKgOver5: 0.4,
  turn: 2,
  flip: 4,
  /** Step to another station with the sheet in hand: by size and weight, as turns are. */
  walk: 3,
  /** Take the part in or out sideways along the punch, or tilted. */
  sideways: 5,
  tilt: 1,
  /** Place by eye to a scribed line where no finger reaches. */
  scribed: 30,
  dwell: 0.3,
  /** Build one station of tools, and prepare machine, blanks and test strip for the batch. */
  station: 240,
  batch: 600,
} as const;

/** What the time model calls the axes that are set by hand between steps. */
export const SET_BY_HAND = 'axes set by hand between steps';

/** How much slower a large or heavy sheet is handled: a factor, 1 for a small one. */
export const handlingFactor = (longest: number, kilograms: number): number =>
  1 + (Math.max(0, longest - 300) / 100) * (TIME.perHundredOver300 / TIME.seat) + Math.max(0, kilograms - 5) * (TIME.perKgOver5 / TIME.seat);

/** The ram's own time for one stroke: down fast, slow from the change point, dwell, back up. s */
export const strokeSeconds = (machine: Machine, opening: number, openingOut: number, depth: number, thickness: number): number => {
  const fast = Math.max(0, opening - thickness - machine.changePoint);
  const slow = Math.min(opening - thickness, machine.changePoint) + depth;
  return fast / machine.speeds.approach + slow / machine.speeds.bend + TIME.dwell + (openingOut - thickness + depth) / machine.speeds.return;
};

/** What it takes to build one station on this machine. s */
export const stationSeconds = (machine: Pick<Machine, 'stationSeconds'>): number => machine.stationSeconds ?? TIME.station;

/** The least that any stroke of this depth costs: the ram opens no further than its change point. s */
export const leastStroke = (machine: Machine, depth: number, thickness: number): number =>
  strokeSeconds(machine, thickness + LEAST_OPENING, thickness + LEAST_OPENING, depth, thickness);

/** No sheet is brought in through less. mm */
const LEAST_OPENING = 8;

export const waySeconds = (way: Way): number => (way.by === 'side' ? TIME.sideways : way.by === 'tilt' ? TIME.tilt : 0);

export const sumOf = (pieces: readonly TimePiece[]): number => pieces.reduce((sum, p) => sum + p.seconds, 0);

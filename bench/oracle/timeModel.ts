import type { Machine } from '../../src/shop/index.js';

/**
 * The time model of docs/planner.md written a second time, so that a slip in the planner's own shows. Seconds; what one
 * stroke costs, and what lies between two.
 */
export const SEAT = 3;
const [FLIP, TURN, WALK, SIDEWAYS, TILT, SCRIBED, DWELL] = [4, 2, 3, 5, 1, 30, 0.3];
export const STATION = 240;
export const BATCH = 600;
export { WALK };

/** How the sheet lies: which side is up, and where the gauge is in the blank's plane, degrees. */
export interface Lie {
  readonly sideUp: 'A' | 'B';
  readonly towards: number;
}

/** Degrees within which two directions are one. */
const SAME = 1;
const between = (a: number, b: number, full: number): number => {
  const d = (((a - b) % full) + full) % full;
  return d < full / 2 ? d : full - d;
};

/** Turning the sheet over about the bend line leaves that line where it is; any other change of direction is a turn as well. */
export const changeOf = (before: Lie, after: Lie): number => {
  if (before.sideUp === after.sideUp) return between(before.towards, after.towards, 360) > SAME ? TURN : 0;
  return FLIP + (between(before.towards, after.towards, 180) > SAME ? TURN : 0);
};

/** What the ram does in one stroke, mm over the die top; `touch` is where it meets the metal: a lying sheet's thickness, or the top of a hem's flange. */
export interface Ram {
  readonly opening: number;
  readonly openingOut: number;
  readonly depth: number;
  readonly touch: number;
}

/** Down to the change point over the metal at approach speed, on at bending speed to the depth, dwell, up at return speed. */
export const ramSeconds = ({ speeds, changePoint }: Machine, { opening, openingOut, depth, touch }: Ram): number => {
  const above = opening - touch;
  const slowly = Math.min(above, changePoint);
  return (above - slowly) / speeds.approach + (slowly + depth) / speeds.bend + DWELL + (openingOut - touch + depth) / speeds.return;
};

export type WayBy = 'front' | 'side' | 'tilt';
export const waySeconds = (by: WayBy): number => ({ front: 0, side: SIDEWAYS, tilt: TILT })[by];

export const stopSeconds = (kind: 'edge' | 'flange' | 'none'): number => (kind === 'none' ? SCRIBED : 0);

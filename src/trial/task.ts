import type { Conflict } from './conflict.js';
import type { Group } from './groups.js';
import type { StrokeAnswer, StrokeOption } from './strokeOption.js';
import type { Symmetry } from './symmetry.js';
import { TIME } from './time.js';

/** A group put in the machine one way: with which side to the gauge and which pair. */
export interface Action {
  readonly group: number;
  readonly gaugeSide: 0 | 1;
  readonly pair: number;
  /** Which side is up, and where the gauge lies as an angle in the blank's plane (degrees, 0 to 360). */
  readonly sideUp: 'A' | 'B';
  readonly towards: number;
  /** The ram's and the operator's time for this stroke alone, before ways and hand-set axes are known. s */
  readonly base: number;
  /** What the stroke costs beyond `base` at the least, in whatever fold: its own wings must pass in and out. s */
  readonly leastExtra: number;
  /** Among plans of equal time the plainer tool comes first: 0 is the plainest. */
  readonly plainness: number;
}

/** What a limit remembers of a partial plan; plans of different keys never stand for one another. */
export interface Held {
  readonly key: string;
}

/** A hard limit on whole plans that depends on the stops taken. */
export interface Holding {
  readonly start: Held;
  /** The stops of a stroke that make a difference to the limit. */
  readonly options: (answer: StrokeAnswer & { readonly ok: true }) => readonly StrokeOption[];
  /** Null when the limit can no longer be held. */
  readonly after: (before: Held, option: StrokeOption) => Held | null;
}

/** How many stations a plan is made on, and how often it goes from one to another. */
export interface Stood {
  readonly stations: number;
  readonly walks: number;
}

/** What the search is asked: strokes, what each costs, and whom to ask whether it may be made. */
export interface SearchTask {
  readonly groups: readonly Group[];
  readonly actions: readonly Action[];
  /** Can these two pairs (indices) stand on one bed under one ram? */
  readonly together: (a: number, b: number) => boolean;
  /** s per part for opening one more pair. */
  readonly stationShare: number;
  readonly handling: number;
  /** Does the user's own word on the order leave room for this stroke with these bends made? */
  readonly allows: (action: Action, mask: number) => boolean;
  readonly answer: (action: Action, mask: number) => StrokeAnswer;
  /** What an answered stroke costs beyond `base`: ways, scribed line. s */
  readonly extra: (option: StrokeOption) => number;
  /** What hand-set axes cost between two strokes. s */
  readonly handSetting: (before: StrokeOption | null, after: StrokeOption) => number;
  /** False when no axis is set by hand: then the last stop need not be remembered. */
  readonly remembersStop: boolean;
  /** What the layout of a whole plan adds to its stations and walks as taken, or why it cannot stand on the bed. s */
  readonly finish: (plan: readonly Planned[], taken: Stood) => { readonly ok: true; readonly seconds: number } | { readonly ok: false; readonly conflict: Conflict };
  /** Ways to lay the blank onto itself under which every answer and cost is the same. */
  readonly symmetries: readonly Symmetry[];
  /** Present when tolerances limit the plans. */
  readonly holding?: Holding;
  readonly stopNow: () => boolean;
  readonly onBest?: (seconds: number, bound: number) => void;
}

/** A stroke in a plan, with the bends made before it. */
export interface Planned {
  readonly action: Action;
  readonly option: StrokeOption;
  readonly mask: number;
}

/** A stroke that was refused, with the fold in which it was. */
export interface Blocked {
  readonly action: Action;
  readonly mask: number;
  readonly conflicts: readonly Conflict[];
}

/** Angles towards the gauge nearer than this are the same: the sheet need not be turned. Degrees. */
const SAME_WAY = 1;

const apartBy = (a: number, b: number, period: number): number => {
  const d = Math.abs(a - b) % period;
  return Math.min(d, period - d);
};

/** Do two bend lines lie the same way in the blank, whichever side of them is the gauge's? Degrees. */
export const sameAxis = (towards: number, other: number): boolean => apartBy(towards, other, 180) <= SAME_WAY;

/** Does the sheet lie the same way round? */
export const sameWay = (towards: number, other: number): boolean => apartBy(towards, other, 360) <= SAME_WAY;

/** What the operator does with the sheet between two strokes. s, before the handling factor */
export const changeSeconds = (before: Pick<Action, 'sideUp' | 'towards'>, after: Pick<Action, 'sideUp' | 'towards'>): number =>
  before.sideUp !== after.sideUp
    ? TIME.flip + (sameAxis(before.towards, after.towards) ? 0 : TIME.turn)
    : sameWay(before.towards, after.towards) ? 0 : TIME.turn;

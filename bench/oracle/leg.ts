import type { Searched } from '../../src/trial/index.js';
import { SEAT, type Lie, ramSeconds, stopSeconds, waySeconds } from './timeModel.js';

type Task = Searched['task'];
type Action = Task['actions'][number];
type Answer = ReturnType<Task['answer']>;
export type Option = Extract<Answer, { readonly ok: true }>['option'];

/** One stroke that may be made in a fold, with all that the cost of an order asks of it. s and mm */
export interface Leg extends Lie {
  readonly action: Action;
  readonly group: number;
  readonly pair: number;
  /** Seconds of this stroke by itself: sheet to the stop, ram, ways, scribed line. */
  readonly seconds: number;
  /** Length that the tools must reach over, and at most have. */
  readonly least: number;
  readonly most: number;
  /** Where axes that are set by hand stand; null where nothing is stopped. */
  readonly stop: { readonly x: number; readonly r: number } | null;
}

/** mm from first touch at `degrees` of bend angle: c tan b - (Ri + t + rd)(1/cos b - 1), b half of it (docs/kinematics.md). */
const depthOf = ({ bend }: Option['setting']): number => {
  if (bend.kind !== 'V') throw new Error('the oracle knows V bends only');
  const x = (bend.bendAngleUnderLoad * Math.PI) / 180;
  const inside = bend.allowance / x - bend.neutral;
  return bend.halfOpening * Math.tan(x / 2) - (inside + bend.thickness + bend.shoulderRadius) * (1 / Math.cos(x / 2) - 1);
};

export const legOf = (task: Task, action: Action, { setting, need, tools, stop }: Option): Leg => ({
  action, group: action.group, pair: action.pair, sideUp: action.sideUp, towards: action.towards,
  seconds:
    SEAT * task.handling +
    ramSeconds(setting.machine, { opening: tools.wayIn.opening, openingOut: tools.wayOut.opening, depth: depthOf(setting), thickness: setting.bend.thickness }) +
    waySeconds(tools.wayIn.by) + waySeconds(tools.wayOut.by) + stopSeconds(stop.kind),
  least: need[1] - need[0],
  most: tools.window[1] - tools.window[0],
  stop: stop.kind === 'none' ? null : { x: stop.axisX, r: stop.r },
});

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

/**
 * Height of a flattening punch's face over the anvil (mm) where it meets the hem's flange at `degrees` of bend angle: the outer face is followed from the lying
 * plate's line along the arc's runs, and of the flange what lies over the punch's face counts.
 */
const faceOver = (bend: Extract<Option['setting']['bend'], { readonly kind: 'hem close' }>, degrees: number): number => {
  let [back, up, turned] = [bend.lineBack, bend.thickness / 2, 0];
  for (const run of bend.runsAt(degrees)) {
    const chords = 20_000;
    const step = run.turned === 0 ? run.length / chords : (run.length / run.turned + run.shift) * (run.turned / chords);
    for (let k = 0; k < chords; k++) {
      const way = turned + ((k + 0.5) * run.turned) / chords;
      back += step * Math.cos(way);
      up += step * Math.sin(way);
    }
    turned += run.turned;
  }
  const outer = { back: back + (bend.thickness / 2) * Math.sin(turned), up: up - (bend.thickness / 2) * Math.cos(turned) };
  // how far along the flange its outer face still lies over the punch's face, which ends `face` before the bending plane
  const under = Math.cos(turned) >= 0 ? bend.flange : Math.min(bend.flange, Math.max(0, (outer.back + bend.face) / -Math.cos(turned)));
  return outer.up + under * Math.sin(turned);
};

/** Height of first touch over the die top and mm from there to the end of the stroke. */
const strokeOf = (setting: Option['setting']): { readonly touch: number; readonly depth: number } => {
  const { bend } = setting;
  if (bend.kind === 'hem close') {
    const touch = faceOver(bend, bend.from);
    return { touch, depth: touch - faceOver(bend, bend.bendAngle) };
  }
  return { touch: bend.thickness, depth: depthOf(setting) };
};

/** mm from first touch at `degrees` of bend angle: c tan b - (Ri + t + rd)(1/cos b - 1), b half of it (docs/kinematics.md). */
const depthOf = ({ bend }: Option['setting']): number => {
  if (bend.kind !== 'V') throw new Error('the oracle knows V bends and hems only');
  const x = (bend.bendAngleUnderLoad * Math.PI) / 180;
  const inside = bend.allowance / x - bend.neutral;
  return bend.halfOpening * Math.tan(x / 2) - (inside + bend.thickness + bend.shoulderRadius) * (1 / Math.cos(x / 2) - 1);
};

export const legOf = (task: Task, action: Action, { setting, need, tools, stop }: Option): Leg => {
  const { touch, depth } = strokeOf(setting);
  return {
    action, group: action.group, pair: action.pair, sideUp: action.sideUp, towards: action.towards,
    seconds:
      SEAT * task.handling +
      ramSeconds(setting.machine, { opening: tools.wayIn.opening, openingOut: tools.wayOut.opening, depth, touch }) +
      waySeconds(tools.wayIn.by) + waySeconds(tools.wayOut.by) + stopSeconds(stop.kind),
    least: need[1] - need[0],
    most: tools.window[1] - tools.window[0],
    stop: stop.kind === 'none' ? null : { x: stop.axisX, r: stop.r },
  };
};

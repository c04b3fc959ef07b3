import type { Machine } from '../shop/index.js';
import { isScribed } from './stopChoice.js';
import { type Stroke, touchOf, travelOf } from './stroke.js';
import type { StrokeOption } from './strokeOption.js';
import type { Planned } from './task.js';
import { TIME, leastStroke, strokeSeconds, waySeconds } from './time.js';
import type { Way } from './ways.js';

/** Axis values nearer than this need not be set anew. mm */
const SAME_SETTING = 0.05;

/** What a stroke costs on this machine beyond the least that its own travel asks, by the stated time model. s */
export interface StrokeCosts {
  readonly ways: (stroke: Stroke, wayIn: Way, wayOut: Way) => number;
  /** The ways and a scribed line of an answered stroke. */
  readonly extra: (option: StrokeOption) => number;
  /** Axes without a drive, set by hand between two strokes. */
  readonly handSetting: (before: StrokeOption | null, after: StrokeOption) => number;
  /** False when no axis of the gauge is set by hand: then the last stop makes no difference. */
  readonly remembersStop: boolean;
  /** Extras and hand-set axes of a whole plan. */
  readonly ofPlan: (plan: readonly Planned[]) => number;
}

export const strokeCosts = (machine: Machine): StrokeCosts => {
  const { x, r } = machine.gauge;
  const byHand = (axis: typeof x): number => (axis.drive === 'by hand' ? axis.seconds : 0);
  const ways = (stroke: Stroke, wayIn: Way, wayOut: Way): number => {
    const [touch, depth] = [touchOf(stroke), travelOf(stroke)];
    return strokeSeconds(machine, wayIn.opening, wayOut.opening, depth, touch) - leastStroke(machine, depth, touch) + waySeconds(wayIn) + waySeconds(wayOut);
  };
  const extra = ({ tools, stop, setting: { bend } }: StrokeOption): number => ways(bend, tools.wayIn, tools.wayOut) + (isScribed(stop) ? TIME.scribed : 0);
  const handSetting = (before: StrokeOption | null, after: StrokeOption): number => {
    if (!before || before.stop.kind === 'none' || after.stop.kind === 'none') return 0;
    const differ = (a: number, b: number): boolean => Math.abs(a - b) > SAME_SETTING;
    return (differ(before.stop.axisX, after.stop.axisX) || differ(before.stop.skew ?? 0, after.stop.skew ?? 0) ? byHand(x) : 0) + (differ(before.stop.r, after.stop.r) ? byHand(r) : 0);
  };
  return {
    ways, extra, handSetting,
    remembersStop: x.drive === 'by hand' || r.drive === 'by hand',
    ofPlan: (plan) => plan.reduce((sum, { option }, i) => sum + extra(option) + handSetting(plan[i - 1]?.option ?? null, option), 0),
  };
};

import { type Rigid, type Vec3, compose, length3, scale3, shift } from '../geometry/index.js';
import type { Move, Step, Trial } from '../trial/index.js';
import { angleBefore, anglesDuring, stationOf } from './record.js';
import { seatPose } from './seatPose.js';
import { phaseWords } from './strokeWords.js';
import { tipAt } from './tipAt.js';

/** One moment of a stroke: where everything stands. */
export interface Moment {
  /** In words, for the caption. */
  readonly phase: string;
  /** Degrees of bend angle of the running bends, and of all. */
  readonly angle: number;
  readonly angles: readonly number[];
  /** Of plate `sides[0]` of the first running bend, in the machine. */
  readonly pose: Rigid;
  /** mm up of the punch tip from the die seat. */
  readonly tip: number;
  /** mm that the ram has come down since the punch touched the sheet; null while it does not bear on it. */
  readonly travel: number | null;
  /** mm by which the gauge stands back from its stop. */
  readonly behind: number;
}

/** mm: a way in or out is drawn no longer than this; only its beginning or end tells anything. */
const WAY = 320;

/** When each phase ends, as a share of the whole film: the bend itself gets the most of it. */
const ENDS = { in: 0.24, close: 0.36, bend: 0.66, release: 0.72, open: 0.82, out: 1 } as const;

/** The film's moments worth stopping at, in order. */
export const PHASE_ENDS: readonly number[] = Object.values(ENDS).map((end) => (end === 1 ? 1 : end - 0.002));

const within = (t: number, from: number, end: number): number => Math.min(1, Math.max(0, (t - from) / (end - from)));

/** A turn of the machine's frame about the line through (back 0, `up`) along the bed; positive lifts what lies behind. */
const tiltAbout = (degrees: number, up: number): Rigid => {
  const a = (degrees * Math.PI) / 180;
  const [c, s] = [Math.cos(a), Math.sin(a)];
  return { x: [1, 0, 0], y: [0, c, s], z: [0, -s, c], o: [0, up * s, up - up * c] };
};

const shortened = (by: Vec3): Vec3 => (length3(by) > WAY ? scale3(by, WAY / length3(by)) : by);

/** The displacement after the share `s` of all the moves, each given as much time as another. `apex` is the inner apex's height before the first. */
const after = (moves: readonly Move[], s: number, apex: number): Rigid => {
  let pose = shift([0, 0, 0]);
  let up = apex;
  moves.forEach((move, i) => {
    const done = within(s * moves.length, i, i + 1);
    if (move.kind === 'shift') {
      const by = scale3(shortened(move.by), done);
      pose = compose(shift(by), pose);
      up += by[2];
    } else pose = compose(tiltAbout(move.degrees * done, up), pose);
  });
  return pose;
};

/** The same backwards: displaced so that the moves still to come bring it to its seat, where the inner apex is at `apex`. */
const before = (moves: readonly Move[], s: number, apex: number): Rigid => {
  const back = [...moves].reverse().map((move): Move =>
    move.kind === 'shift' ? { kind: 'shift', by: scale3(move.by, -1) } : { kind: 'tilt', degrees: -move.degrees });
  return after(back, 1 - s, apex);
};

/**
 * The film of a stroke: where all stands at its share `t` (0 to 1), from the way in to the way out. "A step in time" of docs/kinematics.md. What does
 * not change is worked out once, so that a page can ask for moment after moment.
 */
export const filmOf = (trial: Trial, step: Step): ((t: number) => Moment) => {
  const { dieTop } = stationOf(trial, step);
  const words = phaseWords(step);
  const full = step.bendAngleUnderLoad;
  const start = angleBefore(trial, step);
  const [touch, low] = [tipAt(trial, step, start), tipAt(trial, step, step.bendAngle)];
  const [openIn, openOut] = [dieTop + step.ramOpening, dieTop + step.ramOpeningOut];
  const behind = step.stop.retract;
  const at = (angle: number): Pick<Moment, 'angle' | 'angles' | 'pose'> => ({ angle, angles: anglesDuring(trial, step, angle), pose: seatPose(trial, step, angle) });
  return (t) => {
    if (t < ENDS.in) {
      const seat = at(start);
      const way = before(step.wayIn, within(t, 0, ENDS.in * 0.9), touch);
      return { ...seat, phase: words.in, pose: compose(way, seat.pose), tip: openIn, travel: null, behind: 0 };
    }
    if (t < ENDS.close) return { ...at(start), phase: words.close, tip: openIn + (touch - openIn) * within(t, ENDS.in, ENDS.close), travel: null, behind: 0 };
    if (t < ENDS.release) {
      const bends = t < ENDS.bend;
      const angle = bends ? start + (full - start) * within(t, ENDS.close, ENDS.bend) : full + (step.bendAngle - full) * within(t, ENDS.bend, ENDS.release);
      const tip = tipAt(trial, step, angle);
      return { ...at(angle), phase: bends ? words.bend : words.bottom, tip, travel: touch - tip, behind };
    }
    const made = at(step.bendAngle);
    if (t < ENDS.open) return { ...made, phase: words.open, tip: low + (openOut - low) * within(t, ENDS.release, ENDS.open), travel: null, behind };
    const way = after(step.wayOut, within(t, ENDS.open, ENDS.out), low);
    return { ...made, phase: words.out, pose: compose(way, made.pose), tip: openOut, travel: null, behind };
  };
};

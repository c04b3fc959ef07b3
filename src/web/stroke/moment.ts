import { type Rigid, type Vec3, compose, length3, scale3, shift } from '../../geometry/index.js';
import type { Move, Trial } from '../../trial/index.js';
import { type Setting, anglesBefore, apexDepth, seatPose } from './seat.js';

/** One moment of a stroke: where everything stands. */
export interface Moment {
  /** In words, for the caption. */
  readonly phase: string;
  /** Degrees of bend angle of the running bend. */
  readonly angle: number;
  readonly angles: readonly number[];
  /** Of plate `sides[0]` of the running bend, in the machine. */
  readonly pose: Rigid;
  /** mm up of the punch tip from the die seat. */
  readonly tip: number;
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

/** Where all stands at the share `t` (0 to 1) of the stroke, from the way in to the way out. "A step in time" of docs/kinematics.md. */
export const momentAt = (trial: Trial, setting: Setting, t: number): Moment => {
  const { step, station, die, running } = setting;
  const { sheet } = trial;
  const full = step.bendAngleUnderLoad;
  const touch = station.dieTop + sheet.part.thickness;
  const at = (angle: number): Pick<Moment, 'angle' | 'angles' | 'pose'> => {
    const angles = anglesBefore(trial, step.number);
    for (const bend of running) angles[bend] = angle;
    return { angle, angles, pose: seatPose(trial, setting, angle) };
  };
  const tipAt = (angle: number): number => touch - apexDepth(sheet, running[0]!, angle, die);
  // flat, or where an earlier pass has left the bend
  const start = anglesBefore(trial, step.number)[running[0]!]!;
  const first = tipAt(start);
  if (t < ENDS.in) {
    const flat = at(start);
    const way = before(step.wayIn, within(t, 0, ENDS.in * 0.9), touch);
    return { ...flat, phase: 'the sheet to its stop', pose: compose(way, flat.pose), tip: station.dieTop + step.ramOpening, behind: 0 };
  }
  if (t < ENDS.close) {
    const open = station.dieTop + step.ramOpening;
    return { ...at(start), phase: 'the punch comes down to the sheet', tip: open + (first - open) * within(t, ENDS.in, ENDS.close), behind: 0 };
  }
  if (t < ENDS.bend) {
    const angle = start + (full - start) * within(t, ENDS.close, ENDS.bend);
    return { ...at(angle), phase: 'the bend', tip: tipAt(angle), behind: step.stop.retract };
  }
  if (t < ENDS.release) {
    const angle = full + (step.bendAngle - full) * within(t, ENDS.bend, ENDS.release);
    return { ...at(angle), phase: 'released: it springs back', tip: tipAt(angle), behind: step.stop.retract };
  }
  const made = at(step.bendAngle);
  const apex = tipAt(step.bendAngle);
  const open = station.dieTop + step.ramOpeningOut;
  if (t < ENDS.open) return { ...made, phase: 'the punch goes up', tip: apex + (open - apex) * within(t, ENDS.release, ENDS.open), behind: step.stop.retract };
  const way = after(step.wayOut, within(t, ENDS.open, ENDS.out), apex);
  return { ...made, phase: 'the part comes out', pose: compose(way, made.pose), tip: open, behind: step.stop.retract };
};

import { type Rigid, type Vec3, apply, compose, invert, shift } from '../geometry/index.js';
import { type Developed, acrossBend, bendFrame, insideRadiusAt, middleFrame } from '../sheet/index.js';
import { type Die, halfOpening } from '../shop/index.js';
import type { Step, Trial } from '../trial/index.js';
import { bendIndex, dieOf, stationOf } from './record.js';

const RADIANS = Math.PI / 180;

/** mm from first touch down to the inner apex with the bend turned through `angle` degrees in this die (docs/kinematics.md, d(x)). */
export const apexDepth = (sheet: Developed, bend: number, angle: number, die: Die): number => {
  if (angle === 0) return 0;
  const b = (angle / 2) * RADIANS;
  const corner = insideRadiusAt(sheet, bend, angle) + sheet.part.thickness + die.shoulderRadius;
  return halfOpening(die) * Math.tan(b) - corner * (1 / Math.cos(b) - 1);
};

/** The same while a hem is closed: the plate across from the hem's flange lies on the anvil. docs/kinematics.md, "Closing a hem". */
const hemSeat = (trial: Trial, step: Step, angle: number): Rigid => {
  const index = bendIndex(trial, step.bends[0]!);
  const bend = trial.sheet.part.bends[index]!;
  const rightwards = (bend.direction === 'A') === (step.gaugeSide === 1) ? 1 : -1;
  const o: Vec3 = [step.place, step.lineBack ?? 0, stationOf(trial, step).dieTop + trial.sheet.part.thickness / 2];
  const line: Rigid = { x: [rightwards, 0, 0], y: [0, step.gaugeSide === 1 ? 1 : -1, 0], z: [0, 0, bend.direction === 'A' ? 1 : -1], o };
  const lying = compose(line, invert(bendFrame(bend.sides[step.gaugeSide === 1 ? 0 : 1].line)));
  return step.gaugeSide === 1 ? lying : compose(lying, invert(acrossBend(trial.sheet, index, angle)));
};

/** The same for an offset: the flange beyond the second bend lies on the high land, that beyond the first is level with it. docs/kinematics.md, "An offset bend". */
const offsetSeat = (trial: Trial, step: Step, angle: number): Rigid => {
  const { sheet } = trial;
  const [i, j] = step.bends.map((id) => bendIndex(trial, id)) as [number, number];
  const [first, second] = [sheet.part.bends[i]!, sheet.part.bends[j]!];
  const low = second.sides.some((s) => s.plate === first.sides[0].plate) ? 1 : 0;
  const rightwards = (first.direction === 'A') === (step.gaugeSide === 1) ? 1 : -1;
  const line: Rigid = { x: [rightwards, 0, 0], y: [0, step.gaugeSide === 1 ? 1 : -1, 0], z: [0, 0, first.direction === 'A' ? 1 : -1], o: [step.place, 0, 0] };
  const level = compose(line, invert(bendFrame(first.sides[low].line)));
  const [one, two] = [acrossBend(sheet, i, angle), acrossBend(sheet, j, angle)];
  const web = low === 0 ? one : invert(one);
  const high = second.sides[0].plate === first.sides[1 - low]!.plate ? 1 : 0;
  const { from } = second.sides[high].line;
  const stands = apply(compose(level, compose(web, high === 1 ? two : invert(two))), [from[0], from[1], 0]);
  const lies = compose(shift([0, (step.lineBack ?? 0) - stands[1], stationOf(trial, step).dieTop + sheet.part.thickness / 2 - stands[2]]), level);
  return low === 0 ? lies : compose(lies, web);
};

/**
 * How the sheet lies in the tools of a step with the running bends at `angle` degrees: the pose of the frame of plate
 * `sides[0]` of the step's first bend, in the machine frame. docs/kinematics.md, "In a V" and what follows it.
 */
export const seatPose = (trial: Trial, step: Step, angle: number): Rigid => {
  if (step.kind === 'hem close') return hemSeat(trial, step, angle);
  if (step.kind === 'offset bend') return offsetSeat(trial, step, angle);
  const bend = bendIndex(trial, step.bends[0]!);
  const { direction } = trial.sheet.part.bends[bend]!;
  const { dieTop } = stationOf(trial, step);
  const rightwards = (direction === 'A') === (step.gaugeSide === 1) ? 1 : -1;
  const backwards = step.gaugeSide === 1 ? 1 : -1;
  const upwards = direction === 'A' ? 1 : -1;
  const up = dieTop + trial.sheet.part.thickness / 2 - apexDepth(trial.sheet, bend, angle, dieOf(trial, step.die));
  const o: Vec3 = [step.place, 0, up];
  const middle: Rigid = { x: [rightwards, 0, 0], y: [0, backwards, 0], z: [0, 0, upwards], o };
  return compose(middle, invert(middleFrame(trial.sheet, bend, angle, 0)));
};

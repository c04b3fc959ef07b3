import { type Rigid, type Vec3, compose, invert } from '../../geometry/index.js';
import { type Developed, insideRadiusAt, middleFrame } from '../../sheet/index.js';
import { type Die, halfOpening } from '../../shop/index.js';
import type { Station, Step, Trial } from '../../trial/index.js';

const RADIANS = Math.PI / 180;

/** The step's own pieces, looked up by their names. */
export interface Setting {
  readonly step: Step;
  readonly station: Station;
  readonly die: Die;
  /** Indices of the bends made. */
  readonly running: readonly number[];
}

const named = <T extends { readonly id: string }>(list: readonly T[], id: string): T => {
  const found = list.find((it) => it.id === id);
  if (!found) throw new Error(`the trial names "${id}" and has it not`);
  return found;
};

export const settingOf = (trial: Trial, step: Step): Setting => ({
  step,
  station: named(trial.stations, step.station),
  die: named(trial.dies, step.die),
  running: step.bends.map((id) => trial.sheet.part.bends.findIndex((bend) => bend.id === id)),
});

/** Bend angles (degrees) when the steps before number `before` are made. */
export const anglesBefore = (trial: Trial, before: number): number[] => {
  const angles = trial.sheet.part.bends.map(() => 0);
  for (const { number, bends, bendAngle } of trial.steps) {
    if (number >= before) continue;
    trial.sheet.part.bends.forEach(({ id }, i) => {
      if (bends.includes(id)) angles[i] = bendAngle;
    });
  }
  return angles;
};

/** mm from first touch down to the inner apex at this bend angle: d(x) of docs/kinematics.md. */
export const apexDepth = (sheet: Developed, bend: number, angle: number, die: Die): number => {
  if (angle === 0) return 0;
  const b = (angle / 2) * RADIANS;
  return halfOpening(die) * Math.tan(b) - (insideRadiusAt(sheet, bend, angle) + sheet.part.thickness + die.shoulderRadius) * (1 / Math.cos(b) - 1);
};

/** Where plate `sides[0]` of the step's first bend stands in the machine with that bend at `angle`: "In a V" of docs/kinematics.md. */
export const seatPose = (trial: Trial, { step, station, die, running }: Setting, angle: number): Rigid => {
  const bend = running[0]!;
  const { direction } = trial.sheet.part.bends[bend]!;
  const along = (direction === 'A') === (step.gaugeSide === 1) ? 1 : -1;
  const back = step.gaugeSide === 1 ? 1 : -1;
  const up = direction === 'A' ? 1 : -1;
  const o: Vec3 = [step.place, 0, station.dieTop + trial.sheet.part.thickness / 2 - apexDepth(trial.sheet, bend, angle, die)];
  return compose({ x: [along, 0, 0], y: [0, back, 0], z: [0, 0, up], o }, invert(middleFrame(trial.sheet, bend, angle, 0)));
};

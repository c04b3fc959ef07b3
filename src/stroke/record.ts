import type { Die, Punch } from '../shop/index.js';
import type { Station, Step, Trial } from '../trial/index.js';

const named = <T extends { readonly id: string }>(list: readonly T[], id: string): T => {
  const found = list.find((it) => it.id === id);
  if (!found) throw new Error(`the trial names "${id}" and has it not`);
  return found;
};

export const stepOf = (trial: Trial, number: number): Step => {
  const step = trial.steps.find((s) => s.number === number);
  if (!step) throw new Error(`the trial has no step ${number}`);
  return step;
};

export const stationOf = (trial: Trial, step: Step): Station => named(trial.stations, step.station);
export const punchOf = (trial: Trial, id: string): Punch => named(trial.punches, id);
export const dieOf = (trial: Trial, id: string): Die => named(trial.dies, id);

/** Index of the bend with this id. */
export const bendIndex = (trial: Trial, id: string): number => {
  const { bends } = trial.sheet.part;
  return bends.indexOf(named(bends, id));
};

/** Bend angles once the steps up to and including number `upTo` are made (0: the flat blank). Degrees. */
export const anglesAfter = (trial: Trial, upTo: number): number[] => {
  const angles = trial.sheet.part.bends.map(() => 0);
  for (const step of trial.steps) {
    if (step.number > upTo) continue;
    for (const id of step.bends) angles[bendIndex(trial, id)] = step.bendAngle;
  }
  return angles;
};

/** Bend angles while `step` runs, its own bends turned through `angle`. Degrees. */
export const anglesDuring = (trial: Trial, step: Step, angle: number): number[] => {
  const angles = anglesAfter(trial, step.number - 1);
  for (const id of step.bends) angles[bendIndex(trial, id)] = angle;
  return angles;
};

/** Degrees of bend angle that the step's bends have before the stroke: 0, or where an earlier stroke left them. */
export const angleBefore = (trial: Trial, step: Step): number => anglesAfter(trial, step.number - 1)[bendIndex(trial, step.bends[0]!)]!;

/** Index of the plate whose pose `seatPose` gives. */
export const rootOf = (trial: Trial, step: Step): number => trial.sheet.part.bends[bendIndex(trial, step.bends[0]!)]!.sides[0].plate;

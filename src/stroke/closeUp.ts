import { type Vec2, apply, bounds, compose } from '../geometry/index.js';
import { fold } from '../sheet/index.js';
import { profileOf } from '../shop/index.js';
import type { Step, Trial } from '../trial/index.js';
import { angleBefore, anglesDuring, bendIndex, punchOf, rootOf, stationOf } from './record.js';
import { seatPose } from './seatPose.js';
import { tipAt } from './tipAt.js';

/** mm of the scene about a hem: in front of the flange's end, behind the fold (the fingers' noses), under the anvil's top and over the punch's face. */
const HEM = { front: 6, behind: 8, under: 6, over: 7 } as const;
/** mm about an offset: under the land that goes down and over the sheet; how many times the step is shown to either side, and no less than that. */
const OFFSET = { under: 5, over: 7, steps: 3, least: 11 } as const;

/** What a close-up of a stroke shows, in mm (back, up) of the machine. */
export interface CloseUp {
  readonly backs: readonly [number, number];
  readonly ups: readonly [number, number];
}

/** How far to the front a hem's flange reaches at a bend angle, mm back. */
const flangeEnd = (trial: Trial, step: Step, angle: number): number => {
  const { sheet } = trial;
  const { plate } = sheet.part.bends[bendIndex(trial, step.bends[0]!)]!.sides[step.gaugeSide];
  const pose = compose(seatPose(trial, step, angle), fold(sheet, anglesDuring(trial, step, angle), rootOf(trial, step)).poses[plate]!);
  return Math.min(...sheet.part.plates[plate]!.outline.map((v) => apply(pose, [v.x, v.y, 0])[1]));
};

/** The place where a hem is closed or an offset made, as near as shows all that moves. */
export const closeUp = (trial: Trial, step: Step): CloseUp => {
  const { dieTop, punchFacing } = stationOf(trial, step);
  const { thickness } = trial.sheet.part;
  const [start, end] = [angleBefore(trial, step), step.bendAngle];
  const touch = tipAt(trial, step, start);
  if (step.kind === 'hem close') {
    const [[front], [back]]: readonly [Vec2, Vec2] = bounds([profileOf(punchOf(trial, step.punch), punchFacing).filter((v) => Math.abs(v.y) < 1e-6)]);
    const least = Math.min(flangeEnd(trial, step, start), flangeEnd(trial, step, end)) - HEM.front;
    return { backs: [Math.min(-3, Math.max(front - HEM.front, least)), back + HEM.behind], ups: [dieTop - HEM.under, touch + HEM.over] };
  }
  const travel = touch - tipAt(trial, step, end);
  const half = Math.max(OFFSET.least, OFFSET.steps * travel);
  return { backs: [-half, half], ups: [dieTop - travel - OFFSET.under, dieTop + thickness + OFFSET.over] };
};

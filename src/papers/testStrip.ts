import { type TestStripPlan, type TestStripSize, testStripSize } from '../forming/index.js';
import type { Trial } from '../trial/index.js';
import { type Units, fineText, roundText } from './format.js';
import { dieOf } from './seatPose.js';

export interface TestStrip extends TestStripSize {
  /** The station whose tools bend it. */
  readonly station: string;
  /** Degrees and mm from touch: the wanted bend, and a flatter one on a second strip, where the trial gives it. */
  readonly bends: TestStripPlan['bends'];
}

/** One strip for each station and bend angle that the trial uses, to be cut from the same sheet as the blanks. */
export const testStrips = (trial: Trial): TestStrip[] => {
  const strips = new Map<string, TestStrip>();
  for (const step of trial.steps) {
    if (step.kind !== 'V bend') continue;
    const key = `${step.station} ${step.bendAngle.toFixed(1)}`;
    if (strips.has(key)) continue;
    const size = step.forming?.testStrip ?? testStripSize(dieOf(trial, step.die).v, trial.sheet.part.thickness);
    const flatter = step.forming?.testStrip?.bends.slice(1) ?? [];
    strips.set(key, {
      station: step.station, along: size.along, across: size.across, bends: [{ bendAngle: step.bendAngle, depth: step.depth }, ...flatter],
    });
  }
  return [...strips.values()];
};

/** What to do with a strip, in words. */
export const testStripWords = ({ station, along, across, bends: [first, second] }: TestStrip, units: Units): string => {
  const wanted = `wanted: bend angle ${first!.bendAngle.toFixed(1)}°, included angle ${(180 - first!.bendAngle).toFixed(1)}°.`;
  const size = `${roundText(along, units)} along the bend by ${roundText(across, units)} across it from the same sheet, in the blank's rolling direction.`;
  const depth = (b: TestStrip['bends'][number]): string => `${fineText(b.depth, units)} from touch`;
  const then = 'Measure thickness, both legs outside and the angle; correct depth and stops before the first blank.';
  return second === undefined
    ? `Cut a strip ${size} Bend its middle at station ${station} to depth ${depth(first!)}; ${wanted} ${then}`
    : `Cut two strips ${size} Bend the middle of the first at station ${station} to depth ${depth(first!)}; ${wanted} Bend the second to depth ` +
      `${depth(second)} (bend angle ${second.bendAngle.toFixed(1)}°): two angles and the force or angle under load tell the batch's strength and the deduction. ${then}`;
};

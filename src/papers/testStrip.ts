import type { Trial } from '../trial/index.js';
import { type Units, fineText, roundText } from './format.js';
import { dieOf } from './seatPose.js';

/** mm along the bend (common practice, no source): long enough to measure at both ends and the middle. */
const ALONG = 100;
/** Each leg: this many V openings, at least 50 mm for a protractor's blade (common practice, no source). */
const LEG_IN_V = 3;
const LEAST_LEG = 50;

export interface TestStrip {
  /** The station whose tools bend it. */
  readonly station: string;
  /** mm along the bend, and mm across it in all. */
  readonly along: number;
  readonly across: number;
  /** Degrees. */
  readonly bendAngle: number;
  readonly depth: number;
}

/** One strip for each station and bend angle that the trial uses, to be cut from the same sheet as the blanks. */
export const testStrips = (trial: Trial): TestStrip[] => {
  const strips = new Map<string, TestStrip>();
  for (const step of trial.steps) {
    if (step.kind !== 'V bend') continue;
    const key = `${step.station} ${step.bendAngle.toFixed(1)}`;
    if (strips.has(key)) continue;
    const leg = Math.max(LEAST_LEG, LEG_IN_V * dieOf(trial, step.die).v);
    strips.set(key, { station: step.station, along: ALONG, across: 2 * leg, bendAngle: step.bendAngle, depth: step.depth });
  }
  return [...strips.values()];
};

/** What to do with a strip, in words. */
export const testStripWords = (strip: TestStrip, units: Units): string =>
  `Cut a strip ${roundText(strip.along, units)} along the bend by ${roundText(strip.across, units)} across it from the same sheet, in the blank's ` +
  `rolling direction. Bend its middle at station ${strip.station} to depth ${fineText(strip.depth, units)} from touch; wanted: bend angle ` +
  `${strip.bendAngle.toFixed(1)}°, included angle ${(180 - strip.bendAngle).toFixed(1)}°. Measure thickness, both legs outside and the angle; correct depth and stops before the first blank.`;

import { type TestStripPlan, type TestStripSize, testStripSize } from '../forming/index.js';
import type { Trial } from '../trial/index.js';

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
    const die = trial.dies.find(({ id }) => id === step.die)!;
    const size = step.forming?.testStrip ?? testStripSize(die.v, trial.sheet.part.thickness);
    const flatter = step.forming?.testStrip?.bends.slice(1) ?? [];
    strips.set(key, {
      station: step.station, along: size.along, across: size.across, bends: [{ bendAngle: step.bendAngle, depth: step.depth }, ...flatter],
    });
  }
  return [...strips.values()];
};

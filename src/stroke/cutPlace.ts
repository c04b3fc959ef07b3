import type { Step, Trial } from '../trial/index.js';
import { bendIndex } from './record.js';

/** So much off any middle that no corner is met, mm. */
const ODD_BIT = 0.1371;

/** mm along the bed, inside the step's bend line: where sections are cut. At its middle, or of two fingers with an X each at the corner of the left one that the tapered edge touches. */
export const cutPlace = (trial: Trial, step: Step): number => {
  const { skew, z } = step.stop;
  if (skew !== undefined) return z[0]! + Math.sign(skew) * (trial.machine.gauge.finger.width / 2 - ODD_BIT);
  const bend = trial.sheet.part.bends[bendIndex(trial, step.bends[0]!)]!;
  const us = bend.zone.flat().map((v) => v.x);
  const middle = (Math.min(...us) + Math.max(...us)) / 2 + ODD_BIT;
  const rightwards = (bend.direction === 'A') === (step.gaugeSide === 1) ? 1 : -1;
  return step.place + rightwards * middle;
};

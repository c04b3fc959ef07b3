import type { Step, Trial } from '../trial/index.js';
import { bendIndex } from './record.js';

/** mm along the bed, inside the step's bend line and off its middle by an odd bit so that no corner is met: where sections are cut. */
export const cutPlace = (trial: Trial, step: Step): number => {
  const bend = trial.sheet.part.bends[bendIndex(trial, step.bends[0]!)]!;
  const us = bend.zone.flat().map((v) => v.x);
  const middle = (Math.min(...us) + Math.max(...us)) / 2 + 0.1371;
  const rightwards = (bend.direction === 'A') === (step.gaugeSide === 1) ? 1 : -1;
  return step.place + rightwards * middle;
};

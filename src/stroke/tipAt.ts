import { flatten } from '../geometry/index.js';
import { profileOf } from '../shop/index.js';
import type { Step, Trial } from '../trial/index.js';
import { bendIndex, dieOf, punchOf, stationOf } from './record.js';
import { restingTip } from './restingTip.js';
import { runningLines } from './runningLines.js';
import { apexDepth } from './seatPose.js';

/** mm by which a punch's rounded edge may leave its chords. */
const CHORD = 0.001;

/**
 * up of the punch's lowest point from the die seat with the step's bends at `angle` degrees and the punch bearing on the sheet: in a V its
 * tip at the inner apex, closing a hem its face on the flange, making an offset its low land and edge on the sheet's upper face. mm
 */
export const tipAt = (trial: Trial, step: Step, angle: number): number => {
  const station = stationOf(trial, step);
  if (step.kind === 'V bend') {
    return station.dieTop + trial.sheet.part.thickness - apexDepth(trial.sheet, bendIndex(trial, step.bends[0]!), angle, dieOf(trial, step.die));
  }
  const outline = flatten(profileOf(punchOf(trial, step.punch), station.punchFacing), CHORD);
  return restingTip(outline, runningLines(trial, step, angle));
};

import type { Step, Trial } from '../trial/index.js';
import { angleBefore } from './record.js';
import { tipAt } from './tipAt.js';

/** Halvings: 180 degrees come down to far below what can be drawn. */
const HALVINGS = 30;

/** Degrees of bend angle at which the ram has come down by the share of its way from touch to the stroke's lowest point. */
export const angleAtShare = (trial: Trial, step: Step, share: number): number => {
  let [low, high] = [angleBefore(trial, step), step.bendAngleUnderLoad];
  const [from, to] = [tipAt(trial, step, low), tipAt(trial, step, high)];
  const wanted = from + (to - from) * share;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    if (tipAt(trial, step, middle) > wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

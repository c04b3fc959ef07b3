import type { Trial, TrialInput } from '../trial/index.js';
import { carriedOver } from './carryOver.js';
import type { FitCell } from './fitCell.js';
import { type FitAsked, fitTrial } from './fitTrial.js';
import type { PlanAndProveHooks } from './planAndProve.js';

/** s for a plan by a way that is known: nothing is left to search but what the way leaves open. */
const SECONDS_KNOWN = 6;

/**
 * The plan that a cell of a board tells of, where the cell was kept without it. One whose search does not end, as where the cell was made by
 * the way of another machine, is planned by the cell's own way. Null where neither makes it.
 */
export const plannedAgain = async (input: TrialInput, { way, warnings }: Pick<FitCell, 'way' | 'warnings'>, asked: FitAsked, hooks: PlanAndProveHooks = {}): Promise<Trial | null> => {
  const plan = async (question: TrialInput): Promise<Trial | null> => {
    const trial = await fitTrial(question, { ...asked, remedies: false }, hooks);
    return trial.verdict === 'makes' ? trial : null;
  };
  const found = await plan(input);
  if (found !== null || way === null) return found;
  const known = carriedOver({ ...input, limits: { ...input.limits, seconds: SECONDS_KNOWN } }, way);
  const again = known && (await plan(known));
  return again && { ...again, proven: false, bound: 0, warnings };
};

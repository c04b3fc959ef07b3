import type { Trial, TrialInput } from '../trial/index.js';
import type { PlanAndProveHooks } from './planAndProve.js';
import { remediesFor } from './remedies.js';

/** A trial's answer, and where it is a 'does not make' what was found to change it: only confirmed changes make a 'makes with remedy'. */
export const withRemedies = async (input: TrialInput, trial: Trial, hooks: PlanAndProveHooks = {}): Promise<Trial> => {
  if (trial.verdict !== 'does not make') return trial;
  const { remedies, inVain, cut } = await remediesFor(input, trial, hooks);
  return { ...trial, remedies, ...(inVain !== null && { inVain }), ...(cut && { remediesCut: true }), verdict: remedies.length > 0 ? 'makes with remedy' : trial.verdict };
};

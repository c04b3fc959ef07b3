import { type Trial, type TrialInput, planTrial } from '../trial/index.js';
import { judgedPlan } from './judgedPlan.js';
import { type PlanAndProveHooks, proved } from './planAndProve.js';

/** A plan as a buyer may be promised it (`judgedPlan`), and proved. */
export const planJudged = (input: TrialInput, hooks: PlanAndProveHooks = {}): Promise<Trial> => {
  const { trial, asked } = judgedPlan(input, (question) => planTrial(question, hooks), hooks.cancelled);
  return proved(asked, trial, hooks);
};

import { proveTrial } from '../proof/index.js';
import { type ProofSummary, type Trial, type TrialHooks, type TrialInput, planTrial } from '../trial/index.js';
import { afterProof, needsProof, unproved } from './afterProof.js';

export interface PlanAndProveHooks extends TrialHooks {
  /** The plan before its proof: something to keep when the proof is stopped. Not to be shown as good. */
  readonly onPlanned?: (trial: Trial) => void;
  /** A plan that the independent check did not confirm, with the question that it answers: a defect of the planner, which must not be lost where another plan stands in its place. */
  readonly onRejected?: (input: TrialInput, planned: Trial, proof: ProofSummary) => void;
  /** 0 to 1 */
  readonly onProof?: (share: number) => void;
}

/** A plan that answers `input`, replayed by the independent check; one without strokes to replay comes back as it is. */
export const proved = async (input: TrialInput, trial: Trial, hooks: PlanAndProveHooks): Promise<Trial> => {
  hooks.onPlanned?.(trial);
  if (!needsProof(trial)) return trial;
  if (hooks.cancelled?.() === true) return unproved(trial, 'Stopped before the independent check of the plan.');
  const proof = await proveTrial(trial, hooks.onProof === undefined ? {} : { onProgress: hooks.onProof });
  if (proof.checked && !proof.passed) {
    const { perStep: _, ...summary } = proof;
    hooks.onRejected?.(input, trial, summary);
  }
  return afterProof(trial, proof);
};

/**
 * Plans one part on one machine and has the plan replayed by the independent check: the one way in which a trial comes to
 * the verdict 'makes'. A rejected plan comes back as 'not decided' with the finding as its first reason.
 *
 * @example await planAndProve({ part, machine, rack, metal, quantity: 10 }, { now: () => performance.now() })
 */
export const planAndProve = (input: TrialInput, hooks: PlanAndProveHooks = {}): Promise<Trial> => proved(input, planTrial(input, hooks), hooks);

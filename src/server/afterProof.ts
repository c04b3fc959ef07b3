import type { ProofSummary, Trial } from '../trial/index.js';
import type { TrialInput } from './agreed.js';

/** Has this trial a plan that must be proved before it may be shown as good? */
export const needsProof = (trial: Trial): boolean => trial.verdict === 'makes' || trial.verdict === 'makes with remedy';

/** The trial as it may be shown, and the text of the defect file when the proof rejected the plan. */
export const afterProof = (input: TrialInput, trial: Trial, proof: ProofSummary): { readonly trial: Trial; readonly defect?: string } => {
  const proved: Trial = { ...trial, proof };
  if (proof.checked && proof.passed) return { trial: proved };
  const finding = proof.findings[0] ?? 'it gave no finding';
  return {
    trial: withheld(proved, `The independent check did not confirm the plan: ${finding} This is a defect of the program, kept as a file.`),
    defect: JSON.stringify({ format: 'brakewright defect 1', input, trial: proved }),
  };
};

/** A plan that nobody checked is not shown as good. */
export const unproved = (trial: Trial, why: string): Trial => (needsProof(trial) ? withheld(trial, why) : trial);

const withheld = (trial: Trial, sentence: string): Trial => ({
  ...trial,
  verdict: 'not decided',
  proven: false,
  reasons: [{ code: 'limit', sentence, bends: [] }, ...trial.reasons],
});

import type { ProvenStep } from '../proof/index.js';
import type { ProofSummary, Reason, Step, Trial } from '../trial/index.js';

/** Has this trial a plan, so that it must be proved before it may be shown as good? */
export const needsProof = (trial: Trial): boolean => trial.verdict === 'makes' || trial.verdict === 'makes with remedy';

const withheld = (trial: Trial, sentence: string): Trial => {
  const reason: Reason = { code: 'limit', sentence, bends: [] };
  return { ...trial, verdict: 'not decided', proven: false, reasons: [reason, ...trial.reasons] };
};

/** The trial with its proof. A plan that the proof rejects is a defect of the planner and is not shown as good. */
export const afterProof = (trial: Trial, proof: ProofSummary & { readonly perStep?: readonly ProvenStep[] }): Trial => {
  const { perStep, ...summary } = proof;
  // the independent check looks at every body and pose: what it saw nearest is what the step's clearance says
  const steps = trial.steps.map((step): Step => {
    const seen = perStep?.find((p) => p.number === step.number)?.smallestClearance;
    return seen === undefined || seen === null ? step : { ...step, clearance: Math.min(step.clearance, seen) };
  });
  const proved: Trial = { ...trial, steps, proof: summary };
  if (proof.checked && proof.passed) return proved;
  const finding = proof.findings[0] ?? 'it gave no finding.';
  return withheld(proved, `The independent check did not confirm the plan: ${finding} This is a defect of the program, not of the part.`);
};

/** A plan that nobody checked is not shown as good either; `why` is a sentence. */
export const unproved = (trial: Trial, why: string): Trial => (needsProof(trial) ? withheld(trial, why) : trial);

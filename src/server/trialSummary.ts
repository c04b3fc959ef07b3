import { reasonsTold, strokesByEye, tightestMargin } from '../fit/index.js';
import type { Trial } from '../trial/index.js';
import type { TrialSummary } from '../store/index.js';

/** The few figures of a trial that lists and boards show. */
export function trialSummary(trial: Trial, defect: boolean): TrialSummary {
  const clearances = trial.steps.map((step) => step.clearance);
  return {
    steps: trial.steps.length,
    byEye: strokesByEye(trial),
    stations: trial.stations.length,
    seconds: trial.seconds,
    bound: trial.bound,
    proven: trial.proven,
    proof: { checked: trial.proof.checked, passed: trial.proof.passed },
    clearance: clearances.length === 0 ? null : Math.min(...clearances),
    reason: reasonsTold(trial.reasons)[0]?.sentence ?? null,
    remedy: trial.remedies[0]?.sentence ?? null,
    tightest: tightestMargin(trial),
    defect,
  };
}

import type { Reason, Remedy, Trial } from '../trial/index.js';
import { type FitMargin, fitMargins } from './fitMargins.js';

/** One part on one machine, as the fit board shows it. */
export interface FitCell {
  readonly verdict: Trial['verdict'];
  /** Force, length, daylight, throat, gauge travel, tolerance; the tightest first, only those that a plan has. */
  readonly margins: readonly FitMargin[];
  readonly reasons: readonly Reason[];
  readonly remedies: readonly Remedy[];
  /** Predicted making time of one part; null without a plan. */
  readonly seconds: number | null;
  readonly computeSeconds: number;
  readonly proof: { readonly checked: boolean; readonly passed: boolean };
  readonly warnings: readonly string[];
}

/** What the board keeps of a trial. */
export const fitCell = (trial: Trial): FitCell => ({
  verdict: trial.verdict,
  margins: fitMargins(trial),
  reasons: trial.reasons,
  remedies: trial.remedies,
  seconds: trial.steps.length > 0 || trial.verdict === 'makes' ? trial.seconds : null,
  computeSeconds: trial.computeSeconds,
  proof: { checked: trial.proof.checked, passed: trial.proof.passed },
  warnings: trial.warnings,
});

import type { Reason, Remedy, Trial } from '../trial/index.js';
import { type FoundWay, wayOf } from './carryOver.js';
import { type FitMargin, fitMargins, toleranceMargins } from './fitMargins.js';

/** What a cell says: a trial's verdict, or that it was stopped before its turn came. */
export type FitVerdict = Trial['verdict'] | 'not tried';

/** One part on one machine, as the fit board shows it. */
export interface FitCell {
  readonly verdict: FitVerdict;
  /** Force, length, daylight, throat, gauge travel, tolerance; the tightest first, only those that a plan has. */
  readonly margins: readonly FitMargin[];
  /** Of every dimension that is asked a tolerance what the batch spreads, plus and minus mm; `name` tells the dimension. */
  readonly spreads: readonly { readonly name: string; readonly value: number }[];
  readonly reasons: readonly Reason[];
  readonly remedies: readonly Remedy[];
  /** Which changes were looked for and do not help, one sentence; absent where none was looked for or one does. */
  readonly inVain?: string;
  /** Present where the looking was broken off, as `inVain` says: something may help. */
  readonly remediesCut?: true;
  /** Predicted making time of one part, the set-up shared over the quantity; null where it is not made. */
  readonly seconds: number | null;
  /** Predicted, the set-up left out; null where it is not made. */
  readonly partsAnHour: number | null;
  /** Predicted s from the last part of another batch to the first of this: stations, blanks, test strip; null where it is not made. */
  readonly changeOver: number | null;
  readonly computeSeconds: number;
  readonly proof: { readonly checked: boolean; readonly passed: boolean };
  readonly warnings: readonly string[];
  /** By which it is made; null where it is not, or not proved. */
  readonly way: FoundWay | null;
}

/** s of the batch that are the set-up: what the trial's time model shares over the quantity. */
const setUpSeconds = ({ timeModel, quantity }: Trial): number =>
  timeModel.filter(({ what }) => what.startsWith('set-up')).reduce((sum, piece) => sum + piece.seconds * quantity, 0);

const pace = (trial: Trial): Pick<FitCell, 'partsAnHour' | 'changeOver'> => {
  if (trial.verdict !== 'makes' || trial.steps.length === 0) return { partsAnHour: null, changeOver: null };
  const changeOver = setUpSeconds(trial);
  return { partsAnHour: 3600 / (trial.seconds - changeOver / trial.quantity), changeOver };
};

/** A cell whose turn did not come; `why` is a sentence. */
export const notTried = (why: string): FitCell => ({
  verdict: 'not tried', margins: [], spreads: [], reasons: [{ code: 'limit', sentence: why, bends: [] }], remedies: [], seconds: null, partsAnHour: null, changeOver: null, computeSeconds: 0,
  proof: { checked: false, passed: false }, warnings: [], way: null,
});

/** What the board keeps of a trial. */
export const fitCell = (trial: Trial): FitCell => ({
  ...pace(trial),
  verdict: trial.verdict,
  margins: fitMargins(trial),
  spreads: toleranceMargins(trial).map(({ name, value }) => ({ name, value })),
  reasons: trial.reasons,
  remedies: trial.remedies,
  ...(trial.inVain !== undefined && { inVain: trial.inVain }),
  seconds: trial.verdict === 'makes' ? trial.seconds : null,
  computeSeconds: trial.computeSeconds,
  proof: { checked: trial.proof.checked, passed: trial.proof.passed },
  warnings: trial.warnings,
  way: wayOf(trial),
});

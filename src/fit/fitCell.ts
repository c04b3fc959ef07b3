import { type Reason, type Remedy, SET_BY_HAND, type Trial } from '../trial/index.js';
import { batchSeconds } from './batchSeconds.js';
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
  /** Present where the looking was broken off or something was not settled, as `inVain` says: something may help. */
  readonly remediesCut?: true;
  /** Predicted making time of one part, the set-up shared over the quantity; null where it is not made. */
  readonly seconds: number | null;
  /** Predicted, the set-up left out; null where it is not made. */
  readonly partsAnHour: number | null;
  /** Predicted s from the last part of another batch to the first of this: stations, blanks, test strip; null where it is not made. */
  readonly changeOver: number | null;
  /** What beside seating and stroke takes a third or more of a part's making, and its s a part. */
  readonly slowedBy?: { readonly what: string; readonly seconds: number };
  readonly computeSeconds: number;
  readonly proof: { readonly checked: boolean; readonly passed: boolean };
  readonly warnings: readonly string[];
  /** By which it is made; null where it is not, or not proved. */
  readonly way: FoundWay | null;
}

/** Of a part's making, the share from which one thing beside bending counts as what takes the time. */
const MOST_OF_IT = 1 / 3;
/** What every stroke takes of itself. */
const BENDING: readonly string[] = ['bring the sheet to its stop', 'ram'];

/** What beside seating and stroke takes most of a part's making, where it is a third of it or more. */
const slowedBy = ({ steps, timeModel }: Trial, making: number): Pick<FitCell, 'slowedBy'> => {
  const sums = new Map<string, number>();
  for (const { what, seconds } of [...steps.flatMap(({ time }) => time), ...timeModel.filter(({ what }) => what === SET_BY_HAND)]) sums.set(what, (sums.get(what) ?? 0) + seconds);
  const [most] = [...sums].filter(([what]) => !BENDING.includes(what)).sort((a, b) => b[1] - a[1]);
  return most && most[1] >= MOST_OF_IT * making ? { slowedBy: { what: most[0], seconds: most[1] } } : {};
};

const pace = (trial: Trial): Pick<FitCell, 'partsAnHour' | 'changeOver' | 'slowedBy'> => {
  if (trial.verdict !== 'makes' || trial.steps.length === 0) return { partsAnHour: null, changeOver: null };
  const changeOver = batchSeconds(trial);
  const making = trial.seconds - changeOver / trial.quantity;
  return { partsAnHour: 3600 / making, changeOver, ...slowedBy(trial, making) };
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
  ...(trial.remediesCut && { remediesCut: true }),
  seconds: trial.verdict === 'makes' ? trial.seconds : null,
  computeSeconds: trial.computeSeconds,
  proof: { checked: trial.proof.checked, passed: trial.proof.passed },
  warnings: trial.warnings,
  way: wayOf(trial),
});

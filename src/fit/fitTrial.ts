import type { GeneralClass } from '../metal/index.js';
import type { Remedy, Trial, TrialInput } from '../trial/index.js';
import { planJudged } from './planJudged.js';
import type { PlanAndProveHooks } from './planAndProve.js';
import { withRemedies } from './withRemedies.js';

/** What the fit asks beyond a trial. */
export interface FitAsked {
  /** Look for what would lift a 'does not make'. */
  readonly remedies: boolean;
  /** Class of ISO 2768-1 that dimensions without a tolerance of their own must hold: c when absent, null for none. */
  readonly toleranceClass?: GeneralClass | null;
}

/** Bent sheet without tolerances on its drawing. Common practice, no source. */
const DEFAULT_CLASS: GeneralClass = 'c';

/** mm by which a blank set by eye to a scribed line may lie off. Common practice, no source. */
const SCRIBED = 0.5;

/**
 * One part on one machine as a buyer is answered: planned with every stroke at a stop (a line scribed by hand is no promise), within the
 * ratings for the worst sheet, held against the drawing's tolerances by the same chains as a trial, proved, and for a 'does not make'
 * what would change it. Pure but for the hooks.
 */
export const fitTrial = async (input: TrialInput, asked: FitAsked, hooks: PlanAndProveHooks = {}): Promise<Trial> => {
  const { toleranceClass = DEFAULT_CLASS } = asked;
  const held: TrialInput = { ...input, ...(toleranceClass !== null && { toleranceClass }) };
  const strict: TrialInput = { ...held, limits: { ...input.limits, scribedLine: 'refused' } };
  const trial = await planJudged(strict, hooks);
  if (trial.verdict !== 'does not make' || !asked.remedies) return trial;
  // what is known by now, should the looking be broken off
  hooks.onPlanned?.(trial);
  const lifted = await withRemedies(strict, trial, hooks);
  const byEye = [...trial.reasons, ...(trial.untold ?? [])].some((r) => r.code === 'no stop') ? await scribed(held, hooks) : [];
  return { ...lifted, remedies: [...lifted.remedies, ...byEye] };
};

/** The same part where a line scribed on the blank will do: for the buyer to say, so it changes no verdict. */
const scribed = async (input: TrialInput, hooks: PlanAndProveHooks): Promise<Remedy[]> => {
  if (hooks.cancelled?.() === true) return [];
  const { onPlanned: _, ...rest } = hooks;
  // a line scribed by eye holds no class
  const { toleranceClass: __, ...asked } = input;
  const trial = await planJudged(asked, rest);
  const steps = trial.steps.filter((s) => s.stop.kind === 'none');
  if (trial.verdict !== 'makes' || steps.length === 0) return [];
  return [{
    sentence: `Where plus or minus ${SCRIBED} mm will do (common practice, no source), it is placed by eye to a scribed line at step ${steps.map((s) => s.number).join(', ')} and made in ${trial.seconds.toFixed(1)} s a part.`,
    confirmed: true, seconds: trial.seconds, items: [{ kind: 'scribed line', id: 'scribed line', name: 'A line scribed by hand', price: 0 }],
  }];
};

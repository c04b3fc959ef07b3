import type { Trial, TrialInput } from '../trial/index.js';
import { type PlanAndProveHooks, planAndProve } from './planAndProve.js';

/** Share of the time that the plan with every stroke at a stop may take where another with a scribed line may have to follow. */
const FIRST_SHARE = 2 / 3;
/** s, as `planTrial` takes it where none is said. */
const SECONDS = 30;

/** The same question with every stroke at a stop. */
export const atStops = (input: TrialInput): TrialInput => ({ ...input, limits: { ...input.limits, scribedLine: 'refused' } });

/** Strokes of a plan that are placed by eye: no finger holds them, and no bend begun lies in the V. */
export const strokesByEye = ({ steps }: Pick<Trial, 'steps'>): number => steps.filter(({ stop, pass }) => stop.kind === 'none' && pass !== 2).length;

/** Would a line scribed by eye leave the answer as it is? */
const stands = ({ verdict, reasons, untold = [] }: Trial): boolean =>
  verdict === 'makes' || (verdict === 'does not make' && [...reasons, ...untold].every(({ code }) => code !== 'no stop'));

/**
 * Plans and proves one part on one machine as a trial is answered: with every stroke at a stop, as a fit asks it; only where that does not make
 * the part, with a line scribed by eye where no finger reaches, `strokesByEye` says how many. Both share the time of `limits.seconds`.
 *
 * @example await planAtStops({ part, machine, rack, metal, quantity: 10 }, { now: () => performance.now() })
 */
export const planAtStops = async (input: TrialInput, hooks: PlanAndProveHooks = {}): Promise<Trial> => {
  const seconds = input.limits?.seconds ?? SECONDS;
  const strict = atStops(input);
  if (input.limits?.scribedLine === 'refused') return planAndProve(strict, hooks);
  const first = await planAndProve({ ...strict, limits: { ...strict.limits, seconds: seconds * FIRST_SHARE } }, hooks);
  if (stands(first) || hooks.cancelled?.() === true) return first;
  const left = Math.max(seconds - first.computeSeconds, seconds * (1 - FIRST_SHARE));
  return planAndProve({ ...input, limits: { ...input.limits, seconds: left } }, hooks);
};

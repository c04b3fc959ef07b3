import type { Trial, TrialInput, Wishes } from '../trial/index.js';
import { type PlanAndProveHooks, planAndProve } from './planAndProve.js';

/** Another way to make the part: what is different about it, and what that costs. */
export interface Alternative {
  /** What was ruled out of the best plan to find it, in words. */
  readonly without: string;
  readonly trial: Trial;
  /** s per part more than the best plan; negative only where the best was not proven. */
  readonly more: number;
}

/** Forbids that each take one choice out of a plan, the weightiest first: its punches, its first stroke, its seats. */
const changesTo = (trial: Trial, { forbid = [], ...kept }: Wishes): readonly { readonly without: string; readonly wishes: Wishes }[] => {
  const { bends } = trial.sheet.part;
  const change = (without: string, more: NonNullable<Wishes['forbid']>): { without: string; wishes: Wishes } => ({ without, wishes: { ...kept, forbid: [...forbid, ...more] } });
  const byPunch = trial.punches.map((punch) => change(`without ${punch.name}`, bends.map((b) => ({ bend: b.id, punch: punch.id }))));
  const [first] = trial.steps;
  const byFirst = first && trial.steps.length > 1 ? [change(`not beginning with ${first.bends.join(' and ')}`, first.bends.map((bend) => ({ bend, step: 1 })))] : [];
  const bySeat = trial.steps.flatMap((step) => {
    const bend = bends.find((b) => b.id === step.bends[0])!;
    return [change(`${step.bends.join(' and ')} with the other side to the gauge`, [{ bend: bend.id, plateToGauge: bend.sides[step.gaugeSide].plate }])];
  });
  return [...byPunch, ...byFirst, ...bySeat];
};

/**
 * Other ways to make the part, quickest first: each leaves one choice of the best plan out, is planned again to its own best and
 * replayed by the independent check. At most `most` changes are tried; those that leave no plan are left out.
 */
export const alternatives = async (input: TrialInput, best: Trial, most: number, hooks: PlanAndProveHooks = {}): Promise<readonly Alternative[]> => {
  const found: Alternative[] = [];
  for (const { without, wishes } of changesTo(best, input.wishes ?? {}).slice(0, most)) {
    if (hooks.cancelled?.()) break;
    const trial = await planAndProve({ ...input, wishes }, hooks);
    if (trial.verdict === 'makes') found.push({ without, trial, more: trial.seconds - best.seconds });
  }
  return found.sort((a, b) => a.more - b.more);
};

import { type Remedy, type Trial, type TrialInput, listed } from '../trial/index.js';
import { byChangeKind, changeKind } from './changeKind.js';
import { costsOf } from './costs.js';
import type { PlanAndProveHooks } from './planAndProve.js';
import { planJudged } from './planJudged.js';
import { type Candidate, remedyCandidates } from './remedyCandidates.js';

/** s that each change is planned for: a remedy that is found late is told as not decided. */
const SECONDS_EACH = 6;
/** Most plans made for the remedies of one part on one machine, and how many more once a change that leaves the drawing is confirmed: what is dearer matters less. */
const MOST_PLANS = 12;
const AFTER_FIRST = 3;
/** Plans that a part made in two asks: what is tried before it leaves it so many. */
const PLANS_OF_A_SPLIT = 2;
/** s for all remedies of one part on one machine. */
const SECONDS_ALL = 40;
/** Plans and s more to find out which of several changes that help together are needed. */
const PLANS_FEWER = 24;
const SECONDS_FEWER = 40;

export interface Remedies {
  /** Confirmed; those that leave the drawing as it is first, of each kind the cheapest first. */
  readonly remedies: readonly Remedy[];
  /** What was tried in vain, one sentence; null where nothing was tried or something helped. */
  readonly inVain: string | null;
}

const remedyOf = (chosen: readonly Candidate[], trial: Pick<Trial, 'seconds'>, cutShort = false): Remedy => {
  const items = chosen.map(({ item }) => item);
  const costs = costsOf(items);
  const [cost = { price: 0 }, ...others] = costs ?? [];
  return {
    sentence: `With ${listed(chosen.map(({ words }) => words))} it is made in ${trial.seconds.toFixed(1)} s a part, planned again and confirmed by the independent check.${cutShort ? ' Whether less would do was not tried to the end.' : ''}`,
    confirmed: true, ...(costs !== null && others.length === 0 && cost), items, seconds: trial.seconds,
  };
};

/**
 * What would lift a 'does not make': single changes, cheapest first, each planned again and proved; where none is enough alone, all of
 * them together, and of those none that is not needed (the dearest left out first). Only confirmed ones are told, and what asks nothing
 * of the drawing before what does.
 */
export const remediesFor = async (input: TrialInput, trial: Trial, hooks: PlanAndProveHooks = {}): Promise<Remedies> => {
  const candidates = remedyCandidates(input, [...trial.reasons, ...(trial.untold ?? [])]);
  const now = hooks.now ?? ((): number => 0);
  const started = now();
  let [plans, most, seconds] = [0, MOST_PLANS, SECONDS_ALL];
  const stopped = (): boolean => plans >= most || now() - started > seconds * 1000 || hooks.cancelled?.() === true;
  /** Made with these changes, of which all questions that they leave must be; seconds of all together, and the last one's plan. */
  const made = async (chosen: readonly Candidate[]): Promise<{ readonly seconds: number; readonly trial: Trial } | null> => {
    const questions = chosen.reduce<readonly TrialInput[]>((asked, { apply }) => asked.flatMap(apply), [input]);
    let sum = 0;
    let last: Trial | null = null;
    for (const asked of questions) {
      if (stopped()) return null;
      plans++;
      const each = Math.min(SECONDS_EACH, input.limits?.seconds ?? SECONDS_EACH);
      const again = await planJudged({ ...asked, limits: { ...input.limits, seconds: each } }, {
        ...(hooks.now && { now: hooks.now }), ...(hooks.cancelled && { cancelled: hooks.cancelled }),
      });
      if (again.verdict !== 'makes') return null;
      sum += again.seconds;
      last = again;
    }
    return last && { seconds: sum, trial: last };
  };
  const remedies: Remedy[] = [];
  /** Plans made when the first change that leaves the drawing was confirmed. */
  let firstAt = Infinity;
  const helped = new Set<string>();
  const tried = new Map<string, Candidate>();
  for (const candidate of candidates) {
    if (helped.has(candidate.family)) continue;
    if (plans >= firstAt + AFTER_FIRST) break;
    if (candidate.item.kind === 'split') most = Math.max(most, plans + PLANS_OF_A_SPLIT);
    hooks.onProgress?.({ done: `would it be made with ${candidate.item.name}?`, share: 0.9 });
    const again = await made([candidate]);
    tried.set(candidate.family, candidate);
    if (!again) continue;
    helped.add(candidate.family);
    let [least, by] = [candidate, again];
    for (let smaller = least.smaller?.(by.trial); smaller; smaller = least.smaller?.(by.trial)) {
      const still = await made([smaller]);
      if (!still) break;
      [least, by] = [smaller, still];
    }
    const remedy = remedyOf([least], by);
    if (changeKind(remedy) === 'as drawn') firstAt = Math.min(firstAt, plans);
    remedies.push(remedy);
  }
  if (remedies.length === 0 && tried.size > 1) {
    let chosen = [...tried.values()];
    let best = await made(chosen);
    [most, seconds] = [plans + PLANS_FEWER, (now() - started) / 1000 + SECONDS_FEWER];
    for (const out of best ? [...chosen].reverse() : []) {
      const fewer = chosen.filter((c) => c !== out);
      const again = fewer.length === 0 ? null : await made(fewer);
      if (again) [chosen, best] = [fewer, again];
    }
    if (best) remedies.push(remedyOf(chosen, best, stopped()));
  }
  const vain = [...tried.values()].map(({ item, family }) => `${item.name}${candidates.filter((c) => c.family === family).length > 1 ? ' (and others of its kind)' : ''}`);
  const inVain = remedies.length > 0 ? null
    : candidates.length === 0 ? 'No option of this machine and no tool beyond the rack, as far as the program knows how to shape one, would lift these reasons.'
      : `Tried in vain${vain.length > 1 ? ', alone and together' : ''}: ${vain.join('; ')}.`;
  return { remedies: remedies.sort(byChangeKind), inVain };
};

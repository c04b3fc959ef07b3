import { type Remedy, type Trial, type TrialInput, listed } from '../trial/index.js';
import { batchSeconds } from './batchSeconds.js';
import { byChangeKind, changeKind } from './changeKind.js';
import { costsOf } from './costs.js';
import type { PlanAndProveHooks } from './planAndProve.js';
import { planJudged } from './planJudged.js';
import { type Candidate, remedyCandidates } from './remedyCandidates.js';

/** s that each change is planned for, or a share of what the part itself was given where that is more; what is found later is not settled. */
const SECONDS_EACH = 6;
const SHARE_EACH = 0.3;
/** Most plans made for the remedies of one part on one machine, and how many more once a change that leaves the drawing is confirmed: what is dearer matters less. */
const MOST_PLANS = 12;
const AFTER_FIRST = 3;
/** Plans that a part made in two asks: what is tried before it leaves it so many. */
const PLANS_OF_A_SPLIT = 2;
/** s for all remedies of one part on one machine, or so often what the part itself was given where that is more. */
const SECONDS_ALL = 40;
const TIMES_ALL = 2;
/** Plans and s more to find out which of several changes that help together are needed. */
const PLANS_FEWER = 24;
const SECONDS_FEWER = 40;

export interface Remedies {
  /** Confirmed; those that leave the drawing as it is first, of each kind the cheapest first. */
  readonly remedies: readonly Remedy[];
  /** What was tried in vain and what was not settled, in a sentence each; null where something helped. */
  readonly inVain: string | null;
  /** Nothing helped so far, and of something it was not settled. */
  readonly cut: boolean;
}

/** Made with some changes: by all plans that they leave together, and the last of these; or not, or not settled in the time. */
type Outcome = { readonly seconds: number; readonly partsAnHour: number; readonly trial: Trial } | 'no' | 'open';

const remedyOf = (chosen: readonly Candidate[], { seconds, partsAnHour }: Exclude<Outcome, string>, cutShort = false): Remedy => {
  const items = chosen.map(({ item }) => item);
  const costs = costsOf(items);
  const [cost = { price: 0 }, ...others] = costs ?? [];
  return {
    sentence: `With ${listed(chosen.map(({ words }) => words))} it is made in ${seconds.toFixed(1)} s a part, planned again and confirmed by the independent check.${cutShort ? ' Whether less would do was not tried to the end.' : ''}`,
    confirmed: true, ...(costs !== null && others.length === 0 && cost), items, seconds, partsAnHour,
  };
};

/**
 * What would lift a 'does not make': single changes, cheapest first, each planned again and proved; where none is enough alone, all of
 * them together, and of those none that is not needed (the dearest left out first). Only confirmed ones are told, and what asks nothing
 * of the drawing before what does.
 */
export const remediesFor = async (input: TrialInput, trial: Pick<Trial, 'reasons' | 'untold'>, hooks: PlanAndProveHooks = {}): Promise<Remedies> => {
  const candidates = remedyCandidates(input, [...trial.reasons, ...(trial.untold ?? [])]);
  const now = hooks.now ?? ((): number => 0);
  const started = now();
  const given = input.limits?.seconds ?? SECONDS_EACH;
  const each = Math.min(given, Math.max(SECONDS_EACH, SHARE_EACH * given));
  let [plans, most, seconds] = [0, MOST_PLANS, Math.max(SECONDS_ALL, TIMES_ALL * given)];
  const stopped = (): boolean => plans >= most || now() - started > seconds * 1000 || hooks.cancelled?.() === true;
  /** Is it made with these changes? All questions that they leave must be. */
  const made = async (chosen: readonly Candidate[]): Promise<Outcome> => {
    const questions = chosen.reduce<readonly TrialInput[]>((asked, { apply }) => asked.flatMap(apply), [input]);
    let [sum, making] = [0, 0];
    let last: Trial | null = null;
    for (const asked of questions) {
      if (stopped()) return 'open';
      plans++;
      const again = await planJudged({ ...asked, limits: { ...input.limits, seconds: each } }, {
        ...(hooks.now && { now: hooks.now }), ...(hooks.cancelled && { cancelled: hooks.cancelled }),
      });
      if (again.verdict !== 'makes') return again.verdict === 'does not make' ? 'no' : 'open';
      sum += again.seconds;
      making += again.seconds - batchSeconds(again) / again.quantity;
      last = again;
    }
    return last === null ? 'no' : { seconds: sum, partsAnHour: 3600 / making, trial: last };
  };
  const remedies: Remedy[] = [];
  /** Plans made when the first change that leaves the drawing was confirmed. */
  let firstAt = Infinity;
  const helped = new Set<string>();
  const tried = new Map<string, Candidate>();
  const open = new Set<string>();
  for (const candidate of candidates) {
    if (helped.has(candidate.family)) continue;
    if (plans >= firstAt + AFTER_FIRST) break;
    if (candidate.item.kind === 'split') most = Math.max(most, plans + PLANS_OF_A_SPLIT);
    hooks.onProgress?.({ done: `would it be made with ${candidate.item.name}?`, share: 0.9 });
    const again = await made([candidate]);
    tried.set(candidate.family, candidate);
    if (again === 'open') open.add(candidate.family);
    if (typeof again === 'string') continue;
    helped.add(candidate.family);
    let [least, by] = [candidate, again];
    for (let smaller = least.smaller?.(by.trial); smaller; smaller = least.smaller?.(by.trial)) {
      const still = await made([smaller]);
      if (typeof still === 'string') break;
      [least, by] = [smaller, still];
    }
    const remedy = remedyOf([least], by);
    if (changeKind(remedy) === 'as drawn') firstAt = Math.min(firstAt, plans);
    remedies.push(remedy);
  }
  let together: Outcome = 'no';
  if (remedies.length === 0 && tried.size > 1) {
    let chosen = [...tried.values()];
    let best = together = await made(chosen);
    [most, seconds] = [plans + PLANS_FEWER, (now() - started) / 1000 + SECONDS_FEWER];
    for (const out of typeof best === 'string' ? [] : [...chosen].reverse()) {
      const fewer = chosen.filter((c) => c !== out);
      const again = fewer.length === 0 ? 'no' : await made(fewer);
      if (typeof again !== 'string') [chosen, best] = [fewer, again];
    }
    if (typeof best !== 'string') remedies.push(remedyOf(chosen, best, stopped()));
  }
  if (remedies.length > 0) return { remedies: remedies.sort(byChangeKind), inVain: null, cut: false };
  const named = (of: readonly Candidate[]): string => of.map(({ item, family }) => `${item.name}${candidates.filter((c) => c.family === family).length > 1 ? ' (and others of its kind)' : ''}`).join('; ');
  const vain = [...tried.values()].filter(({ family }) => !open.has(family));
  const unsettled = [...tried.values()].filter(({ family }) => open.has(family));
  const vainTogether = vain.length > 1 && together === 'no';
  const told = [
    ...(vain.length > 0 ? [`Tried in vain${vainTogether ? ', alone and together' : ''}: ${named(vain)}.`] : []),
    ...(unsettled.length > 0 ? [`Not settled in the time given: ${named(unsettled)}.`] : together === 'open' ? ['Whether they help together was not settled in the time given.'] : []),
  ];
  return {
    remedies, cut: unsettled.length > 0 || together === 'open',
    inVain: told.length > 0 ? told.join(' ') : 'No option of this machine and no tool beyond the rack, as far as the program knows how to shape one, would lift these reasons.',
  };
};

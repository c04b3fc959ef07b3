import { type Replaceable, type SharedLayout, type SharedPart, type Trial, type TrialInput, V_LEAST, V_MOST, planTrial, sharedLayout } from '../../trial/index.js';
import { proveTrial } from '../../proof/index.js';
import type { Machine, Rack } from '../../shop/index.js';
import { afterProof, needsProof } from '../afterProof.js';
import { judgedPlan, unpromised } from '../judgedPlan.js';
import { notPlanned } from './notPlanned.js';

/** Parts of one machine that are to stand on one layout, and how much of its bed they may take (mm; all of it when absent). */
export interface OneLayoutAsked {
  readonly inputs: readonly TrialInput[];
  readonly bed?: number;
  /** Computing time for the layout once the parts are planned. s */
  readonly seconds?: number;
}

export interface OneLayoutHooks {
  readonly now?: () => number;
  readonly cancelled?: () => boolean;
  readonly onProgress?: (progress: { readonly done: string; readonly share: number }) => void;
}

/** A layout whose every part was replayed by the independent check with all stations standing. */
export interface OneLayout extends Omit<SharedLayout, 'trials'> {
  /** Of the parts that stand on it, in the order given. */
  readonly trials: readonly Trial[];
  /** Parts that have no plan to stand on a layout: their place in the list as given, and why. */
  readonly without: readonly { readonly input: number; readonly trial: Trial }[];
  /** Left to right: which steps of which part are made there, by the places of the trials. */
  readonly serves: readonly { readonly station: string; readonly parts: readonly { readonly part: number; readonly steps: readonly number[] }[] }[];
  /** For each part: s a piece more than on the layout of its own best plan. */
  readonly more: readonly number[];
}

export type OneLayoutAnswer = { readonly ok: true; readonly value: OneLayout } | { readonly ok: false; readonly sentence: string; readonly trials: readonly Trial[] };

/** s for the search of the layout when the caller sets none. */
const DEFAULT_SECONDS = 20;

interface Planned {
  readonly trial: Trial;
  readonly replaceable: Replaceable | null;
}

/** As a buyer may be promised it, but for the proof, which all have at the end. */
const planned = (input: TrialInput, hooks: OneLayoutHooks): Planned => {
  let replaceable: Replaceable | null = null;
  const plan = (asked: TrialInput): Trial =>
    planTrial(asked, { ...(hooks.now && { now: hooks.now }), ...(hooks.cancelled && { cancelled: hooks.cancelled }), onPlan: (found) => (replaceable = found) });
  const { trial } = judgedPlan(input, plan, hooks.cancelled);
  return { trial, replaceable: trial.verdict === 'makes' ? replaceable : null };
};

const toolsOf = (trials: readonly Trial[]): ReadonlySet<string> => new Set(trials.flatMap(({ punches, dies }) => [...punches, ...dies].map(({ id }) => id)));
const only = (rack: Rack, ids: ReadonlySet<string>): Rack => ({ ...rack, punches: rack.punches.filter(({ id }) => ids.has(id)), dies: rack.dies.filter(({ id }) => ids.has(id)) });

/** Why there is nothing to put on a layout. */
const noneStands = ({ name }: Machine, trials: readonly Trial[]): string =>
  `${name} makes none of the parts asked for as they stand, so there is nothing to put on one layout. ${trials.flatMap((trial, i) => notPlanned(trial, i) ?? []).map(({ part, reason }) => `${part}: ${reason}`).join(' ')}`;

/** s for each plan with other tools. */
const OTHER_SECONDS = 20;

/** A part's plans: its own best, the best with the tools of each other part alone and of all others together, and with each die alone. */
const plansOf = (inputs: readonly TrialInput[], best: readonly Planned[], part: number, hooks: OneLayoutHooks): readonly Replaceable[] => {
  const input = inputs[part]!;
  const { rack } = input;
  const all = new Set([...rack.punches, ...rack.dies].map(({ id }) => id));
  const others = best.filter((_, i) => i !== part).map(({ trial }) => trial);
  const own = toolsOf([best[part]!.trial]);
  const { thickness } = input.part;
  const vs = rack.dies.filter(({ shape, v }) => shape === 'V' && v >= V_LEAST * thickness && v <= V_MOST * thickness);
  const without = (die: string): ReadonlySet<string> => new Set([...all].filter((id) => id === die || !vs.some((other) => other.id === id)));
  const sets = [...new Map([...others.map((trial) => toolsOf([trial])), toolsOf(others), ...vs.map(({ id }) => without(id))].map((ids) => [[...ids].sort().join(), ids])).values()];
  return [best[part]!.replaceable!, ...sets.filter((ids) => [...own].some((id) => !ids.has(id))).flatMap((ids) => {
    if (hooks.cancelled?.()) return [];
    const seconds = Math.min(OTHER_SECONDS, input.limits?.seconds ?? OTHER_SECONDS);
    const { trial, replaceable } = planned({ ...input, rack: only(rack, ids), limits: { ...input.limits, seconds } }, hooks);
    return trial.verdict === 'makes' && replaceable ? [replaceable] : [];
  })];
};

/**
 * Plans several parts of one machine onto one layout with the least length of bed, and has every part replayed by the independent
 * check with all stations standing. Parts without a plan are set aside. `ok` only where each of the others passes; else a sentence, and
 * what was planned.
 */
export const oneLayout = async ({ inputs: asked, bed, seconds = DEFAULT_SECONDS }: OneLayoutAsked, hooks: OneLayoutHooks = {}): Promise<OneLayoutAnswer> => {
  const [first] = asked;
  if (!first) return { ok: false, sentence: 'One layout needs at least one part.', trials: [] };
  const say = (done: string, share: number): void => hooks.onProgress?.({ done, share });
  const all = asked.map((input, i) => {
    say(`planning ${input.part.name}`, (0.4 * i) / asked.length);
    return planned(input, hooks);
  });
  const without = all.flatMap(({ trial, replaceable }, input) => (replaceable === null ? [{ input, trial }] : []));
  const inputs = asked.filter((_, i) => all[i]!.replaceable !== null);
  const best = all.filter(({ replaceable }) => replaceable !== null);
  const trials = best.map(({ trial }) => trial);
  if (best.length === 0) return { ok: false, trials: all.map(({ trial }) => trial), sentence: noneStands(first.machine, without.map(({ trial }) => trial)) };
  const parts = inputs.map(({ part }, i): SharedPart => {
    say(`planning ${part.name} with the others' tools`, 0.4 + (0.2 * i) / inputs.length);
    return { name: part.name, plans: plansOf(inputs, best, i, hooks) };
  });
  say('looking for the shortest row of stations', 0.6);
  const started = hooks.now?.() ?? 0;
  const shared = sharedLayout({
    machine: first.machine, rack: first.rack, parts, ...(bed === undefined ? {} : { bed }),
    stopNow: () => (hooks.cancelled?.() ?? false) || (hooks.now?.() ?? 0) - started > seconds * 1000,
  });
  if (!shared.ok) return { ok: false, sentence: shared.sentence, trials };
  const proved: Trial[] = [];
  for (const [i, trial] of shared.value.trials.entries()) {
    // the shared stations may hold other tools than its own plan, and stand elsewhere under the cylinders
    const [fault] = trial.verdict === 'makes' ? unpromised(trial, inputs[i]!) : [];
    if (fault) return { ok: false, trials: shared.value.trials, sentence: `${trial.sheet.part.name} is no promise on the shared layout: ${fault.reason.sentence}` };
  }
  for (const [i, trial] of shared.value.trials.entries()) {
    say(`checking ${trial.sheet.part.name} with all stations standing`, 0.7 + (0.3 * i) / inputs.length);
    proved.push(needsProof(trial) ? afterProof(trial, await proveTrial(trial)) : trial);
  }
  const rejected = proved.find(({ verdict }) => verdict !== 'makes');
  if (rejected) return { ok: false, trials: proved, sentence: `${rejected.sheet.part.name} was not confirmed on the shared layout: ${rejected.reasons[0]?.sentence ?? rejected.verdict}` };
  return {
    ok: true,
    value: {
      ...shared.value, trials: proved, without, more: proved.map((trial, i) => trial.seconds - trials[i]!.seconds),
      serves: proved[0]!.stations.map(({ id }) => ({
        station: id,
        parts: proved.flatMap(({ steps }, part) => {
          const here = steps.filter(({ station }) => station === id).map(({ number }) => number);
          return here.length > 0 ? [{ part, steps: here }] : [];
        }),
      })),
    },
  };
};

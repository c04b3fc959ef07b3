import type { Rack } from '../shop/index.js';
import { attemptWith } from './attempt.js';
import { withEars } from './earTooling.js';
import type { Group } from './groups.js';
import { dividedIntoHits } from './hits.js';
import type { TrialHooks, TrialInput } from './input.js';
import { keptTrial } from './keptTrial.js';
import type { Layout } from './layout.js';
import { tooHeavy } from './lifting.js';
import { modelSentence } from './modelSentence.js';
import { offsetsOf } from './offsets.js';
import { replaceable } from './replaceable.js';
import { type Twice, statesOf } from './states.js';
import { strokeLength } from './strokeLength.js';
import { type Tooling, toolings } from './tooling.js';
import type { Reason, Trial } from './trial.js';
import { twiceOf } from './twoPasses.js';
import { createWhyNot } from './whyNot.js';
import { wishFault, wishesInWords } from './wishes.js';

/** Computing time when the caller sets none. s */
const DEFAULT_SECONDS = 30;

const NOT_CHECKED: Trial['proof'] = { checked: false, passed: false, smallestClearance: null, largestMotion: null, findings: [] };

/** Most bends of one part: their states are bits of one number. */
const MOST_BENDS = 30;

/** What cannot be bent by single strokes of a V, said before any search. */
const beyond = ({ part }: TrialInput, twice: Twice): { readonly verdict: Trial['verdict']; readonly reason: Reason } | null => {
  const { count } = statesOf(part, twice);
  if (count > MOST_BENDS) {
    return { verdict: 'not decided', reason: { code: 'limit', bends: [], by: count - MOST_BENDS, sentence: `The part has ${part.bends.length} bends${count > part.bends.length ? ` and ${count - part.bends.length} that ask a second stroke` : ''}; the search holds ${MOST_BENDS} states.` } };
  }
  return null;
};

/** N that the bends of a group ask in one stroke. */
const jointForce = ({ forming, sheet }: Tooling, group: Group): number =>
  group.offset || group.closes ? 0 : forming[group.bends[0]!]!.air.peakForcePerLength * strokeLength(sheet.part, group);

/** Of the Vs that fell out by force the one that asks least too much: without it a wider V's trouble would look like the only one. */
const mostForced = (reasons: readonly Reason[]): readonly Reason[] =>
  reasons.filter(({ code }) => code === 'force' || code === 'tool rating').sort((a, b) => (a.by ?? 0) - (b.by ?? 0)).slice(0, 1);

/**
 * Tries one part on one machine: tools, order of bends by search, seats, stops, stations, numbers; or the reasons why
 * not. Pure: the clock and the cancelling come through `hooks`. Times in s, lengths in mm, angles in degrees.
 */
export const planTrial = (asIs: TrialInput, hooks: TrialHooks = {}): Trial => {
  const { machine, rack, metal, quantity } = asIs;
  const divided = dividedIntoHits(asIs.part, metal, machine, rack);
  const part = 'refused' in divided ? asIs.part : divided.part;
  const input: TrialInput = { ...asIs, part };
  const now = hooks.now ?? ((): number => 0);
  const started = now();
  const limit = (input.limits?.seconds ?? DEFAULT_SECONDS) * 1000;
  const stopNow = (): boolean => (hooks.cancelled?.() ?? false) || now() - started > limit;
  const counts: Record<string, number> = {};
  const done = (verdict: Trial['verdict'], more: Partial<Trial>): Trial => ({
    format: 'brakewright trial 1', verdict, sheet: { part, allowances: part.bends.map(() => 0) },
    metal: { id: metal.id, name: metal.name, density: metal.density }, quantity, ...(input.toleranceClass && { toleranceClass: input.toleranceClass }), machine, punches: [], dies: [], risers: [], stations: [], steps: [],
    seconds: 0, timeModel: [], bound: 0, proven: false, model: '', reasons: [], remedies: [], proof: NOT_CHECKED, warnings: [],
    assumptions: [...part.assumptions.map((a) => a.sentence), ...('refused' in divided ? [] : divided.told)], counts, ...more,
    ...(machine.beware ? { warnings: [...(more.warnings ?? []), ...machine.beware] } : {}), computeSeconds: (now() - started) / 1000,
  });
  if (part.bends.length === 0) {
    return done('makes', { proven: true, model: 'A flat sheet asks no stroke.', warnings: ['This part is a flat sheet: there is nothing to bend.'] });
  }
  if ('refused' in divided) return done('does not make', { reasons: [divided.refused] });
  const asked = twiceOf(part, input.inTwo ?? []);
  if ('fault' in asked) return done('does not make', { reasons: [asked.fault] });
  const { twice } = asked;
  const early = beyond(input, twice);
  if (early) return done(early.verdict, { reasons: [early.reason] });

  const stepped = offsetsOf(part, metal, machine, rack);
  if ('refused' in stepped) return done('does not make', { reasons: [stepped.refused] });
  const { grouped: whole, single, count } = statesOf(part, twice, stepped.offsets);
  const wrongWish = input.wishes ? wishFault(part, count, input.wishes) : null;
  if (wrongWish) return done('does not make', { reasons: [wrongWish] });
  const why = createWhyNot(part, machine, twice, limit / 1000);
  const toolReasons: Reason[] = [];
  const tried: number[] = [];
  for (const tooling of toolings(input, whole, twice, toolReasons)) {
    const heavy = tooHeavy(tooling, input);
    if (heavy) return done('does not make', { reasons: [heavy] });
    tried.push(tooling.v);
    // bends that one stroke would make and the machine has not the force for are bent one by one
    const { grouped } = statesOf(part, twice, stepped.offsets, (group) => jointForce(tooling, group) > machine.rating);
    hooks.onProgress?.({ done: `V ${tooling.v}: looking for an order of ${grouped.length} strokes`, share: 1 - 1 / (tried.length + 1) });
    for (const groups of [grouped, ...(single && single.length > grouped.length ? [single] : [])]) {
      let attempt = attemptWith(input, hooks, tooling, groups, twice, stopNow, counts);
      // ears are a matter for boxes: only where plain segments do not do, and only for the strokes that failed at their ends
      const eared = attempt.result.kind === 'none' ? withEars(tooling, machine, groups, attempt.result.blocked) : null;
      if (eared) attempt = attemptWith(input, hooks, eared, groups, twice, stopNow, counts);
      const { result, layout } = attempt;
      const unheld = layout && attempt.within.whereItStands(layout);
      if (result.kind === 'plan' && layout && !unheld) {
        const kept = (on: Layout, of: Rack): Trial => keptTrial({ input: { ...input, rack: of }, attempt, result, layout: on, tried, twice }, done);
        hooks.onPlan?.(replaceable(input, attempt, result.plan, layout, kept));
        return kept(layout, rack);
      }
      why.add(attempt, unheld);
      if (stopNow()) break;
    }
    if (stopNow()) break;
  }
  const undecided = why.undecided() || stopNow();
  const wished = input.wishes ? wishesInWords(input.wishes) : '';
  const wish: readonly Reason[] = wished !== '' && !why.isEmpty() && !why.undecided() ? [{ code: 'no order', bends: [], sentence: `No order is left that keeps to the wish: ${wished}.` }] : [];
  const found = why.reasons(wish, tried.length === 0 ? toolReasons : mostForced(toolReasons));
  // every stroke has tools by itself, and nothing but the ram they share is left to be in the way
  const told: readonly Reason[] = found.length > 0 || undecided ? found
    : [{ code: 'one ram', bends: [], sentence: 'Each stroke has tools by itself, but no choice of them for all strokes stands under one ram, risers included.' }];
  const unstopped = why.unstopped();
  return done(undecided ? 'not decided' : 'does not make', {
    reasons: told, ...(unstopped && !told.some(({ code }) => code === 'no stop') ? { untold: [unstopped] } : {}), model: modelSentence(whole.length, [...new Set(tried)], input, twice),
  });
};

import { type Part, fold } from '../sheet/index.js';
import { createAsker } from './asker.js';
import { type Pair, pairOf } from './bodies.js';
import { withEars } from './earTooling.js';
import type { Group } from './groups.js';
import { dividedIntoHits, hitPitch, hitsInTurn } from './hits.js';
import { smallerSide } from './smallerSide.js';
import type { TrialHooks, TrialInput } from './input.js';
import { type Layout, layoutOf, standTogether } from './layout.js';
import { BASE_ALLOWANCE } from './limits.js';
import { listed } from './listed.js';
import { createPlateClearance } from './plateClearance.js';
import type { Conflict } from './conflict.js';
import { exactDepth } from './exactDepth.js';
import { exactPlateDepth } from './exactPlateDepth.js';
import { exactRoomAlong } from './exactRoomAlong.js';
import { type Untold, asItIs, noStopIn, reasonOf, reasonsFrom } from './reasons.js';
import { replaceable } from './replaceable.js';
import type { SearchResult } from './search.js';
import { madeBy } from './made.js';
import { unheldLimits, withForming } from './stepForming.js';
import { offsetsOf } from './offsets.js';
import { movedWords, settleBySeats } from './seatShift.js';
import { runSeconds, stepsOf } from './steps.js';
import { isScribed, sameFeature } from './stopChoice.js';
import { type StrokeAnswer, type StrokeOption, bendLine, createStrokeAsker, needOf, settingOf } from './strokeOption.js';
import { symmetriesOf } from './symmetry.js';
import type { Action, Blocked, Planned, SearchTask } from './task.js';
import { TIME, handlingFactor, leastStroke, stationSeconds, strokeSeconds, waySeconds } from './time.js';
import { type WithinTolerance, asksTolerance, searchWithin } from './tolerance.js';
import { tooLong } from './tooLong.js';
import { type Tooling, strokeLength, toolings } from './tooling.js';
import type { Reason, Step, Trial } from './trial.js';
import { leastWays } from './toolClearance.js';
import { type Twice, anglesIn, inTurn, statesOf } from './states.js';
import { type Stroke, tipAt, touchOf, travelOf } from './stroke.js';
import type { Way } from './ways.js';
import { allowedBy, wishFault, wishesInWords } from './wishes.js';
import { inTwoWords, twiceOf } from './twoPasses.js';
import { viewer } from './views.js';
import { blankSize } from './developedSize.js';
import { HELP, helpWords, liftingOf, tooHeavy } from './lifting.js';
import { withMeasured } from './measured.js';

/** Computing time when the caller sets none. s */
const DEFAULT_SECONDS = 30;

const NOT_CHECKED: Trial['proof'] = { checked: false, passed: false, smallestClearance: null, largestMotion: null, findings: [] };

/** Most bends of one part: their states are bits of one number. */
const MOST_BENDS = 30;

/** What a stroke does, in the time model. */
const STROKE_WORDS: Readonly<Record<Step['kind'], string>> = { 'V bend': 'bend', 'hem close': 'close hem', 'offset bend': 'offset' };

interface Attempt {
  readonly tooling: Tooling;
  readonly groups: readonly Group[];
  readonly result: SearchResult;
  readonly within: WithinTolerance;
  readonly layout: Layout | null;
  readonly handling: number;
  readonly stationShare: number;
  readonly task: SearchTask;
  readonly raised: (step: Planned, riser: number) => Planned | null;
  readonly force: (step: Planned) => number;
}

const orderWith = (input: TrialInput, hooks: TrialHooks, tooling: Tooling, groups: readonly Group[], twice: Twice, stopNow: () => boolean, counts: Record<string, number>): Attempt => {
  const { machine, rack, quantity } = input;
  const { sheet, pairs } = tooling;
  const asker = createAsker();
  const look = viewer(sheet);
  const stroke = createStrokeAsker(asker, look, createPlateClearance(), input.limits?.scribedLine !== 'refused');
  const { longest, kilograms } = blankSize(sheet, input.metal);
  const handling = handlingFactor(longest, kilograms);
  const waysCost = (bend: Stroke, wayIn: Way, wayOut: Way): number => {
    const [touch, depth] = [touchOf(bend), travelOf(bend)];
    return strokeSeconds(machine, wayIn.opening, wayOut.opening, depth, touch) - leastStroke(machine, depth, touch) + waySeconds(wayIn) + waySeconds(wayOut);
  };
  const angles = anglesIn(sheet.part, twice);
  const flat = fold(sheet, sheet.part.bends.map(() => 0));
  const actions: Action[] = groups.flatMap((group, g) => {
    const bend = sheet.part.bends[group.bends[0]!]!;
    const mayUse = group.closes ? tooling.closing : tooling.pairsOf[group.bends[0]!]!;
    // the flange beyond the second bend comes out higher: it lies where the tools have their high land
    const stands = (gaugeSide: 0 | 1, pair: number): boolean => !group.offset || (gaugeSide === group.hubSide) === (pairs[pair]!.punchFacing === 'as drawn');
    return (group.closes ? [smallerSide(sheet.part, group.bends[0]!)] : ([0, 1] as const)).flatMap((gaugeSide) => mayUse.filter((pair) => stands(gaugeSide, pair)).map((pair): Action => {
      const { line, plate } = bend.sides[0];
      const pose = flat.poses[plate]!;
      const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]];
      const u = [pose.x[0] * dx + pose.y[0] * dy, pose.x[1] * dx + pose.y[1] * dy] as const;
      // the gauge lies to the bend line's left when side 1 points there
      const turned = Math.atan2(u[0], -u[1]) * (180 / Math.PI) + (gaugeSide === 1 ? 0 : 180);
      const setting = settingOf(tooling, machine, group, gaugeSide, pairs[pair]!, look, angles(group.needs ?? 0));
      const made = setting.bend;
      return {
        group: g, gaugeSide, pair, sideUp: bend.direction, towards: ((turned % 360) + 360) % 360,
        plainness: plainness(pairs[pair]!),
        leastExtra: Math.min(...leastWays(setting).map((w) => waysCost(made, w.wayIn, w.wayOut))),
        base: TIME.seat * handling + leastStroke(machine, travelOf(made), touchOf(made)),
      };
    }));
  });
  const answers = new Map<string, StrokeAnswer>();
  const answer = (action: Action, mask: number): StrokeAnswer => {
    const key = `${mask}|${action.group}|${action.gaugeSide}|${action.pair}`;
    const known = answers.get(key);
    if (known) return known;
    const fresh = stroke(tooling, machine, groups[action.group]!, action.gaugeSide, pairs[action.pair]!, angles(mask));
    answers.set(key, fresh);
    return fresh;
  };
  const higherPairs = new Map<string, Pair>();
  const raised = (step: Planned, riser: number): Planned | null => {
    const { pair } = step.option.setting;
    // one pair for all steps on the same raised die: the layout gathers a station's steps by it
    const key = `${pair.key}|${riser}`;
    const higher: Pair = higherPairs.get(key) ?? pairOf(machine, pair.punch, pair.die, pair.punchFacing, riser, pair.ears);
    higherPairs.set(key, higher);
    const again = stroke(tooling, machine, groups[step.action.group]!, step.action.gaugeSide, higher, angles(step.mask));
    const same = again.ok ? [again.option, ...again.others()].find((o) => sameFeature(o.stop.feature, step.option.stop.feature)) : undefined;
    // another stop may break the tolerance that this one was taken for
    const option = same ?? (again.ok && !asksTolerance(input) ? again.option : null);
    return option ? { ...step, option } : null;
  };
  const force = ({ option: { setting: { group, bend } } }: Planned): number => madeBy(tooling, group.bends[0]!, bend).peakForcePerLength * strokeLength(sheet.part, group);
  const byHand = (axis: typeof machine.gauge.x): number => (axis.drive === 'by hand' ? axis.seconds : 0);
  const stationShare = stationSeconds(machine) / quantity;
  const extra = ({ tools, stop, setting: { bend } }: StrokeOption): number => waysCost(bend, tools.wayIn, tools.wayOut) + (isScribed(stop) ? TIME.scribed : 0);
  const handSetting = (before: StrokeOption | null, after: StrokeOption): number => {
    if (!before || before.stop.kind === 'none' || after.stop.kind === 'none') return 0;
    return (Math.abs(before.stop.axisX - after.stop.axisX) > 0.05 || Math.abs((before.stop.skew ?? 0) - (after.stop.skew ?? 0)) > 0.05 ? byHand(machine.gauge.x) : 0) + (Math.abs(before.stop.r - after.stop.r) > 0.05 ? byHand(machine.gauge.r) : 0);
  };
  const ownSeconds = (plan: readonly Planned[]): number =>
    plan.reduce((sum, { option }, i) => sum + extra(option) + handSetting(plan[i - 1]?.option ?? null, option), 0);
  const task: SearchTask = {
    groups, actions, together: pairings(tooling, input), stationShare, handling, answer, stopNow,
    allows: allowing(sheet.part, groups, pairs, input.wishes),
    // a wish names bends, so the images of an order are no longer as good as itself; a bend's second state is not mapped
    symmetries: input.wishes || groups.some((g) => g.needs !== undefined || g.offset) ? [] : symmetriesOf(sheet, earsAreBalanced(rack)),
    extra, handSetting,
    remembersStop: machine.gauge.x.drive === 'by hand' || machine.gauge.r.drive === 'by hand',
    finish: (plan, opened) => {
      const stood = layoutOf(plan, machine, rack, raised, force);
      if (!stood.ok) return { ok: false, conflict: stood.conflict };
      // a raised die changes openings and where the gauge stands
      const risen = stood.layout.plan === plan ? 0 : ownSeconds(stood.layout.plan) - ownSeconds(plan);
      return { ok: true, seconds: (stood.layout.stations.length - opened) * stationShare + risen };
    },
    onBest: (seconds, bound) => hooks.onProgress?.({ done: 'a plan is found; looking for a better one', share: 0.6, bestSeconds: seconds, bound }),
  };
  const within = searchWithin(task, tooling, input);
  const { result } = within;
  hooks.onSearch?.({ task, tooling, result });
  const kept = result.kind === 'plan' ? layoutOf(result.plan, machine, rack, raised, force, machine.seats && settleBySeats(machine)) : null;
  counts['clearance questions asked'] = (counts['clearance questions asked'] ?? 0) + asker.counts.asked;
  counts['clearance questions answered anew'] = (counts['clearance questions answered anew'] ?? 0) + asker.counts.answered;
  counts['strokes asked'] = (counts['strokes asked'] ?? 0) + answers.size;
  counts['states taken'] = (counts['states taken'] ?? 0) + result.states;
  return { tooling, groups, result, within, layout: kept?.ok ? kept.layout : null, handling, stationShare, task, raised, force };
};

/** Second strokes follow first ones, and hits each other, whatever else is wished. */
const allowing = (part: Part, groups: readonly Group[], pairs: readonly Pair[], wishes: TrialInput['wishes']): SearchTask['allows'] => {
  const mayCome = inTurn(groups);
  const hitByHit = hitsInTurn(part, groups);
  const wished = wishes ? allowedBy(part, groups, pairs, wishes) : () => true;
  return (action, mask) => mayCome(action.group, mask) && hitByHit(action.group, mask) && wished(action, mask);
};

/** Are there as many left ear segments as right ones? Only then is a plan as good as its mirror image. */
const earsAreBalanced = (rack: TrialInput['rack']): boolean => rack.punches.every(({ segments }) => {
  const of = (side: 'left' | 'right'): string => segments.flatMap((s) => (s.ear?.hand === side ? [`${s.length}:${s.count}:${s.ear.reach}:${s.ear.footHeight}`] : [])).sort().join();
  return of('left') === of('right');
});

/** Which pairs can stand under one ram, worked out once for each two. */
const pairings = ({ pairs, forming, closing, sheet }: Tooling, { machine, rack }: TrialInput): ((a: number, b: number) => boolean) => {
  const known = new Map<number, boolean>();
  const closed = Math.max(0, ...sheet.part.bends.filter((b) => b.hem).map((b) => 2 * (sheet.part.thickness + b.insideRadius)));
  const lowest = (pair: Pair): number => pair.punch.height + Math.max(...forming.filter((f) => f.die.id === pair.die.id).map(({ bend, offset, setup }) => (bend ? tipAt(bend, bend.bendAngleUnderLoad) : setup.thickness - offset!.form.height)), ...(closing.some((i) => pairs[i]!.die.id === pair.die.id) ? [closed] : []));
  return (a, b) => {
    const key = Math.min(a, b) * pairs.length + Math.max(a, b);
    let can = known.get(key);
    if (can === undefined) known.set(key, (can = standTogether(machine, rack, [pairs[a]!, pairs[b]!], [lowest(pairs[a]!), lowest(pairs[b]!)])));
    return can;
  };
};

/** Plain tools first where time does not tell them apart: straight before relieved before acute, as drawn before reversed. */
const plainness = ({ punch, punchFacing, ears }: Pair): number =>
  ['straight', 'gooseneck', 'acute', 'flattening', 'offset'].indexOf(punch.shape) * 10 + punch.height / 100 + (punchFacing === 'reversed' ? 5 : 0) + (ears ? 3 : 0);

/** What cannot be bent by single strokes of a V, said before any search. */
const beyond = ({ part }: TrialInput, twice: Twice): { readonly verdict: Trial['verdict']; readonly reason: Reason } | null => {
  const { count } = statesOf(part, twice);
  if (count > MOST_BENDS) {
    return { verdict: 'not decided', reason: { code: 'limit', bends: [], by: count - MOST_BENDS, sentence: `The part has ${part.bends.length} bends${count > part.bends.length ? ` and ${count - part.bends.length} that ask a second stroke` : ''}; the search holds ${MOST_BENDS} states.` } };
  }
  return null;
};

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
    metal: { id: metal.id, name: metal.name, density: metal.density }, quantity, machine, punches: [], dies: [], risers: [], stations: [], steps: [],
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
  const { grouped, single, count } = statesOf(part, twice, stepped.offsets);
  const wrongWish = input.wishes ? wishFault(part, count, input.wishes) : null;
  if (wrongWish) return done('does not make', { reasons: [wrongWish] });
  /** What closes every order, for each set of tools by itself; and what is told before that. */
  const byTools: Untold[][] = [];
  const before: Untold[] = [];
  const toolReasons: Reason[] = [];
  const tried: number[] = [];
  let unstopped: Reason | null = null;
  let undecided = false;
  for (const tooling of toolings(part, metal, machine, rack, grouped, toolReasons, input.blank, input.deductions, twice)) {
    const heavy = tooHeavy(tooling, input);
    if (heavy) return done('does not make', { reasons: [heavy] });
    tried.push(tooling.v);
    hooks.onProgress?.({ done: `V ${tooling.v}: looking for an order of ${grouped.length} strokes`, share: 1 - 1 / (tried.length + 1) });
    for (const groups of [grouped, ...(single ? [single] : [])]) {
      let attempt = orderWith(input, hooks, tooling, groups, twice, stopNow, counts);
      // ears are a matter for boxes: only where plain segments do not do, and only for the strokes that failed at their ends
      const eared = attempt.result.kind === 'none' ? withEars(tooling, input.machine, groups, attempt.result.blocked) : null;
      if (eared) attempt = orderWith(input, hooks, eared, groups, twice, stopNow, counts);
      const { result } = attempt;
      const unheld = attempt.layout && attempt.within.whereItStands(attempt.layout);
      if (result.kind === 'plan' && attempt.layout && !unheld) {
        hooks.onPlan?.(replaceable(input, attempt, result.plan, attempt.layout, (layout, rack, byHand) => made({ ...input, rack }, { ...attempt, layout }, result, done, tried, twice, byHand)));
        return made(input, attempt, result, done, tried, twice);
      }
      if (unheld) {
        undecided = true;
        byTools.push([asItIs(unheld)]);
      }
      if (result.kind === 'undecided') {
        undecided = true;
        before.unshift(asItIs({ code: 'limit', bends: [], sentence: `The computing time of ${(limit / 1000).toFixed(0)} s ended before an order was found or ruled out with V ${tooling.v}.` }));
      }
      if (result.kind === 'none' && attempt.within.reason) {
        byTools.push([asItIs(attempt.within.reason)]);
        undecided ||= attempt.within.notKnown;
      } else if (result.kind === 'none') {
        if (result.layout) {
          undecided ||= !tooLong(attempt.tooling, machine);
          byTools.push([asItIs(reasonOf(part, groups[0]!, tooling.pairs[0]!, { ...result.layout, note: result.layout.note ?? '' }, 0))]);
        }
        unstopped ??= noStopIn(tooling.sheet.part, groups, attempt.tooling.pairs, result.blocked);
        byTools.push([...reasonsFrom(tooling.sheet.part, groups, attempt.tooling.pairs, result.blocked, measuring(attempt.tooling, groups, twice, machine))]);
      }
      if (stopNow()) break;
    }
    if (stopNow()) break;
  }
  const wish = input.wishes ? wishesInWords(input.wishes) : '';
  if (wish !== '' && before.length + byTools.length > 0 && !undecided) before.unshift(asItIs({ code: 'no order', bends: [], sentence: `No order is left that keeps to the wish: ${wish}.` }));
  const found = tell([...before, ...nearestFirst(byTools), ...(tried.length === 0 ? toolReasons.map(asItIs) : [])]);
  // every stroke has tools by itself, and nothing but the ram they share is left to be in the way
  const told: readonly Reason[] = found.length > 0 || undecided || stopNow() ? found
    : [{ code: 'one ram', bends: [], sentence: 'Each stroke has tools by itself, but no choice of them for all strokes stands under one ram, risers included.' }];
  return done(undecided || stopNow() ? 'not decided' : 'does not make', {
    reasons: told, ...(unstopped && !told.some(({ code }) => code === 'no stop') ? { untold: [unstopped] } : {}), model: modelSentence(grouped.length, [...new Set(tried)], input, twice),
  });
};

const oneFinger = (steps: readonly string[]): readonly string[] =>
  steps.length === 0 ? [] : [`${steps.length > 1 ? 'Steps' : 'Step'} ${listed(steps)} ${steps.length > 1 ? 'have' : 'has'} room for one finger only: hold the edge square against it.`];

/** Gives a conflict that is to be told its exact depth. */
export const measuring = (tooling: Tooling, groups: readonly Group[], twice: Twice, machine: TrialInput['machine']): ((b: Blocked, c: Conflict) => Conflict) => {
  const look = viewer(tooling.sheet);
  const angles = anglesIn(tooling.sheet.part, twice);
  return ({ action, mask }, conflict) => {
    const setting = settingOf(tooling, machine, groups[action.group]!, action.gaugeSide, tooling.pairs[action.pair]!, look, angles(mask));
    const need = needOf(bendLine(tooling, setting.seat, setting.group));
    const by = exactDepth(setting, conflict, need) ?? exactPlateDepth(setting, conflict) ?? exactRoomAlong(setting, conflict, need);
    return by === null ? conflict : { ...conflict, by };
  };
};

const MOST_TOLD = 6;

/** Tools with which some flange is too short come last: where others got further, what stopped those is worth more. */
const nearestFirst = (byTools: readonly (readonly Untold[])[]): readonly Untold[] => {
  const tooShort = (told: readonly Untold[]): boolean => told.some(({ code }) => code === 'short flange');
  return [...byTools.filter((t) => !tooShort(t)), ...byTools.filter(tooShort)].flat();
};

/** Each subject once: another V that fails in the same place is not told again. */
const tell = (reasons: readonly Untold[]): Reason[] => {
  const first = new Map<string, Untold>();
  for (const r of reasons) if (!first.has(r.about)) first.set(r.about, r);
  const told = new Map<string, Reason>();
  for (const { tell: say } of first.values()) {
    if (told.size >= MOST_TOLD) break;
    const reason = say();
    if (!told.has(reason.sentence)) told.set(reason.sentence, reason);
  }
  return [...told.values()];
};

const modelSentence = (strokes: number, vs: readonly number[], { wishes, part }: TrialInput, twice: Twice): string =>
  `${wishes || twice.size > 0 ? `As asked: ${[...(wishes ? [wishesInWords(wishes)] : []), ...(twice.size > 0 ? [inTwoWords(part, twice)] : [])].join(', ')}. ` : ''}Each of ${strokes} strokes once in a V (${vs.length > 0 ? vs.map((v) => v.toString()).join(', ') : 'none'} mm tried in this order), the rack's own punches both ways round in plain segments (ear segments only where those find no order), one bed and one ram, clearance ${BASE_ALLOWANCE} mm, times by the stated model; the first V that gives a plan is kept.`;

/** How far apart the hits lie on the blank, and what radius each forms by itself. */
const hitWords = ({ sheet: { part, allowances }, forming }: Tooling): string[] => part.bends.flatMap(({ hit }, i) =>
  hit?.number === 1 ? [`The ${hit.count} hits of bend ${hit.of} lie ${hitPitch(part, allowances, hit.of).toFixed(2)} mm apart on the blank; each forms a radius of ${forming[i]!.air.insideRadius.toFixed(1)} mm by itself.`] : []);

const made = (
  input: TrialInput, attempt: Attempt, result: SearchResult & { kind: 'plan' },
  done: (verdict: Trial['verdict'], more: Partial<Trial>) => Trial, tried: readonly number[], twice: Twice, byHand?: number,
): Trial => {
  const { tooling, handling } = attempt;
  const layout = attempt.layout!;
  const lifting = liftingOf(tooling, input);
  const formed = withForming(stepsOf(layout, tooling, input.machine, handling), layout, tooling, input);
  const steps = withMeasured(formed, layout.plan, attempt.within.deviations, anglesIn(tooling.sheet.part, twice)).map((s) => (lifting.help ? { ...s, words: `${HELP}. ${s.words}` } : s));
  // on a layout that serves other parts too, a part answers for the stations that it uses
  const own = new Set(layout.placements.map(({ station }) => station)).size;
  const batch = (TIME.batch + own * stationSeconds(input.machine)) / input.quantity;
  const run = runSeconds(steps);
  const hand = byHand ?? result.seconds - own * attempt.stationShare - run;
  const punches = input.rack.punches.filter((p) => layout.stations.some((s) => s.punch === p.id));
  const dies = input.rack.dies.filter((d) => layout.stations.some((s) => s.die === d.id));
  const risers = input.rack.risers.filter((r) => layout.stations.some((s) => s.riser === r.height && r.seat === dies.find((d) => d.id === s.die)!.tang));
  const formedRadius = tooling.forming.flatMap((f, i) => {
    if (input.part.bends[i]!.kind === 'hem' || input.part.bends[i]!.hit) return [];
    const drawn = input.part.bends[i]!.insideRadius;
    return Math.abs(f.air.insideRadius - drawn) > 0.25 * Math.max(drawn, input.part.thickness)
      ? [`Bend ${input.part.bends[i]!.id} forms an inside radius of ${f.air.insideRadius.toFixed(2)} mm where ${drawn.toFixed(2)} mm is drawn.`] : [];
  });
  return done('makes', {
    sheet: tooling.sheet, ...(tooling.misses ? { misses: tooling.misses } : {}), punches, dies, risers, stations: layout.stations, steps,
    seconds: run + hand + batch,
    timeModel: [
      ...steps.map((s) => ({ what: `step ${s.number}, ${STROKE_WORDS[s.kind]} ${listed(s.bends)}`, seconds: s.time.reduce((a, p) => a + p.seconds, 0) })),
      ...(hand > 1e-6 ? [{ what: 'axes set by hand between steps', seconds: hand }] : []),
      { what: `set-up of ${own} station${own > 1 ? 's' : ''} and the batch, shared by ${input.quantity}`, seconds: batch },
    ],
    lifting, dimensions: attempt.within.predicted(layout),
    bound: result.bound + TIME.batch / input.quantity, proven: result.proven,
    model: modelSentence(steps.length, [...new Set(tried)], input, twice),
    warnings: [
      ...helpWords(lifting),
      ...new Set(tooling.forming.flatMap((f) => f.air.warnings)),
      ...formedRadius,
      ...hitWords(tooling),
      ...unheldLimits(steps),
      ...[movedWords(input.machine, layout)].filter((words) => words !== null),
      ...steps.filter((_, i) => isScribed(layout.plan[i]!.option.stop)).map((s) => `Step ${s.number} finds no stop in the gauge's reach: it is placed by eye to a scribed line.`),
      ...oneFinger(steps.filter((s) => s.stop.z.length === 1).map((s) => String(s.number))),
    ],
  });
};

import type { Part } from '../sheet/index.js';
import { actionsOf } from './actions.js';
import { createAsker } from './asker.js';
import { type Pair, pairOf } from './bodies.js';
import { blankSize } from './developedSize.js';
import type { Group } from './groups.js';
import { hitsInTurn } from './hits.js';
import type { TrialHooks, TrialInput } from './input.js';
import { type Layout, layoutOf, stoodOn } from './layout.js';
import { madeBy } from './made.js';
import { pairings } from './pairings.js';
import { createPlateClearance } from './plateClearance.js';
import type { SearchResult } from './search.js';
import { settleBySeats } from './seatShift.js';
import { type Twice, anglesIn, inTurn } from './states.js';
import { sameFeature } from './stopChoice.js';
import { strokeCosts } from './strokeCosts.js';
import { type StrokeAnswer, createStrokeAsker } from './strokeOption.js';
import { symmetriesOf } from './symmetry.js';
import type { Action, Planned, SearchTask } from './task.js';
import { TIME, handlingFactor, stationSeconds } from './time.js';
import { type WithinTolerance, asksTolerance, searchWithin } from './tolerance.js';
import { strokeLength } from './strokeLength.js';
import type { Tooling } from './tooling.js';
import { viewer } from './views.js';
import { allowedBy } from './wishes.js';

/** One set of tools tried: what was asked of the search, and what came of it. */
export interface Attempt {
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

/**
 * Looks for the quickest order of these strokes with one V and its tools, and stands it on the bed. `counts` is added to.
 * What it answers: the search's result, and the layout where a plan is found and stands.
 */
export const attemptWith = (input: TrialInput, hooks: TrialHooks, tooling: Tooling, groups: readonly Group[], twice: Twice, stopNow: () => boolean, counts: Record<string, number>): Attempt => {
  const { machine, rack, quantity } = input;
  const { sheet, pairs } = tooling;
  const asker = createAsker();
  const look = viewer(sheet);
  const stroke = createStrokeAsker(asker, look, createPlateClearance(), input.limits?.scribedLine !== 'refused');
  const { longest, kilograms } = blankSize(sheet, input.metal);
  const handling = handlingFactor(longest, kilograms);
  const costs = strokeCosts(machine);
  const angles = anglesIn(sheet.part, twice);
  const actions = actionsOf({ tooling, machine, groups, look, angles, handling, waysCost: costs.ways });
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
  const stationShare = stationSeconds(machine) / quantity;
  const task: SearchTask = {
    groups, actions, together: pairings(tooling, input), stationShare, handling, answer, stopNow,
    allows: allowing(sheet.part, groups, pairs, input.wishes),
    // a wish names bends, so the images of an order are no longer as good as itself; a bend's second state is not mapped
    symmetries: input.wishes || groups.some((g) => g.needs !== undefined || g.offset) ? [] : symmetriesOf(sheet, earsAreBalanced(rack)),
    extra: costs.extra, handSetting: costs.handSetting, remembersStop: costs.remembersStop,
    finish: (plan, taken) => {
      const stood = layoutOf(plan, machine, rack, raised, force);
      if (!stood.ok) return { ok: false, conflict: stood.conflict };
      // a raised die changes openings and where the gauge stands
      const risen = stood.layout.plan === plan ? 0 : costs.ofPlan(stood.layout.plan) - costs.ofPlan(plan);
      // the layout gathers strokes by what fits together, which need not be the stations on which they were taken
      const { stations, walks } = stoodOn(stood.layout);
      return { ok: true, seconds: (stations - taken.stations) * stationShare + (walks - taken.walks) * TIME.walk * handling + risen };
    },
    onBest: (seconds, bound) => hooks.onProgress?.({ done: 'a plan is found; looking for a better one', share: 0.6, bestSeconds: seconds, bound }),
  };
  const within = searchWithin(task, tooling, input);
  const { result } = within;
  hooks.onSearch?.({ task, tooling, result });
  const kept = result.kind === 'plan' ? layoutOf(result.plan, machine, rack, raised, force, machine.seats && settleBySeats(machine)) : null;
  const count = (what: string, more: number): void => void (counts[what] = (counts[what] ?? 0) + more);
  count('clearance questions asked', asker.counts.asked);
  count('clearance questions answered anew', asker.counts.answered);
  count('strokes asked', answers.size);
  count('states taken', result.states);
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

import FlatQueue from 'flatqueue';
import { anyOrder, type Order } from './anyOrder.js';
import { boundAhead } from './bound.js';
import type { Conflict } from './conflict.js';
import { bitsOf } from './groups.js';
import { type OpenStation, pairsOf, stationsFor, stationsKey } from './openStation.js';
import type { StrokeOption } from './strokeOption.js';
import { type Action, type Blocked, type Held, type Planned, type SearchTask, changeSeconds } from './task.js';
import { TIME } from './time.js';

export type SearchResult =
  | { readonly kind: 'plan'; readonly plan: readonly Planned[]; readonly seconds: number; readonly bound: number; readonly proven: boolean; readonly states: number }
  | { readonly kind: 'none'; readonly states: number; readonly blocked: readonly Blocked[]; readonly layout: Conflict | null }
  | { readonly kind: 'undecided'; readonly states: number; readonly bound: number };

interface Node {
  readonly mask: number;
  readonly planned: Planned | null;
  readonly parent: Node | null;
  readonly stations: readonly OpenStation[];
  /** Index of the station of the last stroke. */
  readonly at: number;
  readonly cost: number;
  /** Strokes (group and side) that the station at hand takes as cheaply as any pair ever could. */
  readonly settled: Set<number>;
  /** What a limit by tolerance remembers, null where there is none. */
  readonly held: Held | null;
}

/** A stroke that waits to be asked (no option yet) or, once answered, to be taken on a station. */
interface Waiting {
  readonly parent: Node;
  readonly action: Action;
  readonly option: StrokeOption | null;
  readonly cost: number;
  readonly stations: readonly OpenStation[];
  readonly at: number;
}

/** Costs that differ by less are equal: sums of the same pieces in another order. s */
const SAME_COST = 1e-5;
/** Among equal totals the plan with more strokes made goes first, then the plainer tool: far below any real difference. s */
const PER_STROKE = 1e-6;
const PER_PLAINNESS = 1e-8;
/** Looks at the clock once in so many states. */
const CLOCK = 32;

const ROOT: Omit<Node, 'settled' | 'held'> = { mask: 0, planned: null, parent: null, stations: [], at: -1, cost: 0 };

const planOf = (node: Node): Planned[] => {
  const plan: Planned[] = [];
  for (let n: Node | null = node; n?.planned; n = n.parent) plan.unshift(n.planned);
  return plan;
};

/** What it costs to go from a node's last stroke to this one, before the answer is known. s */
const costBefore = (task: SearchTask, node: Node, action: Action): number => {
  const last = node.planned?.action;
  const change = last ? changeSeconds(last, action) * task.handling + (last.pair === action.pair ? 0 : TIME.walk) : 0;
  return node.cost + action.base + change + (node.stations.some((s) => s.pair === action.pair) ? 0 : task.stationShare);
};

/** An answered stroke on each station that may take it. */
const taken = (task: SearchTask, { parent, action, cost }: Pick<Waiting, 'parent' | 'action' | 'cost'>, option: StrokeOption): Waiting[] => {
  const last = parent.planned?.action;
  const hasStation = parent.stations.some((s) => s.pair === action.pair);
  const extra = task.extra(option);
  const dearer = extra + task.handSetting(parent.planned?.option ?? null, option);
  return stationsFor(parent.stations, action, option, task.together).map((choice) => {
    const again = choice.isNew && hasStation ? task.stationShare : 0;
    const walk = last && last.pair === action.pair && choice.at !== parent.at ? TIME.walk : 0;
    return { parent, action, option, cost: cost + dearer + again + walk, stations: choice.stations, at: choice.at };
  });
};

const nodeOf = ({ parent, action, option, cost, stations, at }: Waiting & { readonly option: StrokeOption }, bits: readonly number[], held: Held | null): Node => ({
  mask: parent.mask | bits[action.group]!, planned: { action, option, mask: parent.mask }, parent, stations, at, cost, settled: new Set(), held,
});

/** The fold and the way it lies, the same for all that the part's symmetries take it to. */
const foldKey = (symmetries: SearchTask['symmetries'], mask: number, towards: number): string => {
  const key = (m: number, t: number): number => m * 360 + (((Math.round(t) % 360) + 360) % 360);
  let least = key(mask, towards);
  for (const { bendTo, turned } of symmetries) {
    let image = 0;
    bendTo.forEach((to, i) => {
      if ((mask & (1 << i)) !== 0) image |= 1 << to;
    });
    least = Math.min(least, key(image, turned(towards)));
  }
  return least.toString(36);
};

/** A plan at once: the order that unbending found, each stroke put where it costs least then and there. */
const firstPlan = (task: SearchTask, order: Order, bits: readonly number[]): Node | null => {
  let node: Node = { ...ROOT, settled: new Set(), held: null };
  for (const { group, mask } of order) {
    const ways = task.actions.filter((a) => a.group === group && task.allows(a, mask)).flatMap((action) => {
      const opens = !node.stations.some((s) => s.pair === action.pair);
      return opens && !node.stations.every((s) => task.together(s.pair, action.pair)) ? [] : [{ action, cost: costBefore(task, node, action) + action.leastExtra }];
    });
    ways.sort((a, b) => a.cost - b.cost || a.action.plainness - b.action.plainness);
    let best: (Waiting & { option: StrokeOption }) | null = null;
    for (const { action, cost } of ways) {
      if (best && cost >= best.cost) break;
      const answer = task.answer(action, mask);
      if (!answer.ok) continue;
      for (const way of taken(task, { parent: node, action, cost: cost - action.leastExtra }, answer.option)) {
        if (!best || way.cost < best.cost) best = { ...way, option: answer.option };
      }
    }
    if (!best) return null;
    node = nodeOf(best, bits, null);
  }
  return node;
};

/**
 * The quickest order of strokes by the stated time model. Best-first over (bends made, how the sheet lies, stations set up);
 * the cheap cost orders the states, and clearance is asked only of the stroke that is about to be taken. Begins with the
 * plan that unbending gives, so that there is one whenever time ends.
 */
export const search = (task: SearchTask): SearchResult => {
  const bits = task.groups.map(bitsOf);
  const full = bits.reduce((a, b) => a | b, 0);
  const blocked: Blocked[] = [];
  const order = anyOrder(task, full, blocked);
  if (order === 'none') return { kind: 'none', states: 0, blocked, layout: null };

  const ahead = boundAhead(task);
  const wayOf = ({ group, gaugeSide }: Action): number => group * 2 + gaugeSide;
  const cheapest = new Map<number, number>();
  for (const action of task.actions) cheapest.set(wayOf(action), Math.min(cheapest.get(wayOf(action)) ?? Infinity, action.leastExtra));
  const queue = new FlatQueue<number>();
  const waiting: (Waiting | null)[] = [];
  const closed = new Set<string>();
  let best: { plan: readonly Planned[]; seconds: number } | null = null;
  let states = 0;
  let asked = 0;
  let bound = ahead(0, 0, null);
  let layoutTrouble: Conflict | null = null;
  // a layout may make a plan cheaper than its strokes were (a raised die leaves less to open): then others' bounds may be too high
  let cheaper = false;
  // or dearer (what stands on a raised die may lose its stop): then another plan of as many strokes' seconds, closed behind the
  // same state, may be the better one, and nothing is known past the least of their own seconds
  let hidden = Infinity;

  const complete = (node: Node): void => {
    const plan = planOf(node);
    const end = task.finish(plan, node.stations.length);
    if (!end.ok) {
      layoutTrouble ??= end.conflict;
      return;
    }
    const seconds = node.cost + end.seconds;
    cheaper ||= end.seconds < -SAME_COST;
    if (end.seconds > SAME_COST) hidden = Math.min(hidden, node.cost);
    if (best && seconds >= best.seconds) return;
    best = { plan, seconds };
    task.onBest?.(seconds, bound);
  };
  const push = (entry: Waiting): void => {
    const mask = entry.parent.mask | bits[entry.action.group]!;
    const f = entry.cost + (entry.option ? 0 : entry.action.leastExtra) + ahead(mask, pairsOf(entry.stations) | (1 << entry.action.pair), entry.action);
    if (best && f >= best.seconds - SAME_COST) return;
    const made = mask.toString(2).replaceAll('0', '').length;
    queue.push(waiting.push(entry) - 1, f - made * PER_STROKE + entry.action.plainness * PER_PLAINNESS);
  };
  const expand = (node: Node): void => {
    for (const action of task.actions) {
      if ((node.mask & bits[action.group]!) !== 0 || !task.allows(action, node.mask)) continue;
      const opens = !node.stations.some((s) => s.pair === action.pair);
      if (opens && !node.stations.every((s) => task.together(s.pair, action.pair))) continue;
      push({ parent: node, action, option: null, cost: costBefore(task, node, action), stations: node.stations, at: -1 });
    }
  };
  /** Asks the stroke that is about to be taken. */
  const settle = (entry: Waiting): void => {
    const { parent, action } = entry;
    const way = wayOf(action);
    // the station at hand takes this stroke at the least it can ever cost: with any other pair the plan is no better, since
    // that pair can still be set up when it is needed (unless an axis is set by hand, and the stops would differ)
    if (parent.settled.has(way)) return;
    const answer = task.answer(action, parent.mask);
    if (!answer.ok) {
      blocked.push({ action, mask: parent.mask, conflicts: answer.conflicts });
      return;
    }
    if (task.holding) {
      for (const option of task.holding.options(answer)) taken(task, entry, option).forEach(push);
      return;
    }
    const { option } = answer;
    const ways = taken(task, entry, option);
    const noneCheaper = task.extra(option) <= cheapest.get(way)! + SAME_COST;
    if (noneCheaper && !task.remembersStop && ways.some((w) => w.at === parent.at && w.stations === parent.stations)) parent.settled.add(way);
    ways.forEach(push);
  };

  if (order !== 'stopped' && !task.holding) {
    const first = firstPlan(task, order, bits);
    if (first) complete(first);
    // its own layout may fail where another plan's stands: only what the proof of the best meets counts against `proven`
    layoutTrouble = null;
    hidden = Infinity;
  }
  expand({ ...ROOT, settled: new Set(), held: task.holding?.start ?? null });
  while (queue.length > 0) {
    const f = queue.peekValue()!;
    if (best && f >= (best as { seconds: number }).seconds - SAME_COST) break;
    // past a plan that did not fit, dearer ones prove nothing of those that it may hide
    if (layoutTrouble === null) bound = Math.max(bound, Math.min(f, hidden));
    if (asked++ % CLOCK === 0 && task.stopNow()) {
      const found = best as { plan: readonly Planned[]; seconds: number } | null;
      return found ? { kind: 'plan', ...found, bound, proven: false, states } : { kind: 'undecided', states, bound };
    }
    const next = queue.pop()!;
    const entry = waiting[next]!;
    // what has been taken is not kept: a long search holds many that wait
    waiting[next] = null;
    const { option } = entry;
    if (!option) {
      settle(entry);
      continue;
    }
    const held = task.holding?.after(entry.parent.held!, option) ?? null;
    if (task.holding && !held) continue;
    const node = nodeOf({ ...entry, option }, bits, held);
    const { action } = entry;
    const stop = task.remembersStop ? `|${option.stop.x.toFixed(1)}|${option.stop.r.toFixed(1)}` : '';
    const key = `${foldKey(task.symmetries, node.mask, action.towards)}|${stationsKey(node.stations, node.at)}|${action.sideUp}${stop}${held ? `|${held.key}` : ''}`;
    if (closed.has(key)) continue;
    closed.add(key);
    states++;
    if (node.mask === full) complete(node);
    else expand(node);
  }
  const found = best as { plan: readonly Planned[]; seconds: number } | null;
  if (!found) return { kind: 'none', states, blocked, layout: layoutTrouble };
  // a plan that did not fit on the bed may have hidden another one behind the same state: then nothing is claimed
  const proven = layoutTrouble === null && !cheaper && found.seconds <= hidden + SAME_COST;
  return { kind: 'plan', ...found, bound: proven ? found.seconds : Math.min(bound, found.seconds), proven, states };
};

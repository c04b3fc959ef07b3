import FlatQueue from 'flatqueue';
import type { Conflict } from './conflict.js';
import type { Group } from './groups.js';
import type { StrokeAnswer, StrokeOption } from './strokeOption.js';
import { TIME } from './time.js';

/** A group put in the machine one way: with which side to the gauge and which pair. */
export interface Action {
  readonly group: number;
  readonly gaugeSide: 0 | 1;
  readonly pair: number;
  /** Which side is up, and where the gauge lies as an angle in the blank's plane (degrees, 0 to 360). */
  readonly sideUp: 'A' | 'B';
  readonly towards: number;
  /** The ram's and the operator's time for this stroke alone, before ways and hand-set axes are known. s */
  readonly base: number;
  /** Among plans of equal time the plainer tool comes first: 0 is the plainest. */
  readonly plainness: number;
}

export interface SearchTask {
  readonly groups: readonly Group[];
  readonly actions: readonly Action[];
  /** Can these two pairs (indices) stand on one bed under one ram? */
  readonly together: (a: number, b: number) => boolean;
  /** s per part for opening one more pair. */
  readonly stationShare: number;
  readonly handling: number;
  readonly answer: (action: Action, mask: number) => StrokeAnswer;
  /** What an answered stroke costs beyond `base`: ways, scribed line. s */
  readonly extra: (option: StrokeOption) => number;
  /** What hand-set axes cost between two strokes. s */
  readonly handSetting: (before: StrokeOption | null, after: StrokeOption) => number;
  /** 0 when no axis is set by hand: then the last stop need not be remembered. */
  readonly remembersStop: boolean;
  /** What the layout of a whole plan adds, or why it cannot stand on the bed. s */
  readonly finish: (plan: readonly Planned[], stations: number) => { readonly ok: true; readonly seconds: number } | { readonly ok: false; readonly conflict: Conflict };
  readonly stopNow: () => boolean;
  readonly onBest?: (seconds: number, bound: number) => void;
}

export interface Planned {
  readonly action: Action;
  readonly option: StrokeOption;
  readonly mask: number;
}

export type SearchResult =
  | { readonly kind: 'plan'; readonly plan: readonly Planned[]; readonly seconds: number; readonly bound: number; readonly proven: boolean; readonly states: number }
  | { readonly kind: 'none'; readonly states: number; readonly blocked: readonly Blocked[]; readonly layout: Conflict | null }
  | { readonly kind: 'undecided'; readonly states: number; readonly bound: number };

/** A stroke that was refused, with the fold in which it was. */
export interface Blocked {
  readonly action: Action;
  readonly mask: number;
  readonly conflicts: readonly Conflict[];
}

const bitsOf = (group: Group): number => group.bends.reduce((bits, b) => bits | (1 << b), 0);

/** Angles towards the gauge nearer than this are the same: the sheet need not be turned. Degrees. */
const SAME_WAY = 1;

const apartBy = (a: number, b: number, period: number): number => {
  const d = Math.abs(a - b) % period;
  return Math.min(d, period - d);
};

/** What the operator does with the sheet between two strokes. s, before the handling factor */
export const changeSeconds = (before: Pick<Action, 'sideUp' | 'towards'>, after: Pick<Action, 'sideUp' | 'towards'>): number =>
  before.sideUp !== after.sideUp
    ? TIME.flip + (apartBy(before.towards, after.towards, 180) > SAME_WAY ? TIME.turn : 0)
    : apartBy(before.towards, after.towards, 360) > SAME_WAY ? TIME.turn : 0;

/** A station set up so far: a pair, and the tool lengths that suit every stroke made on it. mm */
interface OpenStation {
  readonly pair: number;
  readonly least: number;
  readonly most: number;
}

interface Node {
  readonly mask: number;
  readonly planned: Planned | null;
  readonly parent: Node | null;
  readonly stations: readonly OpenStation[];
  /** Index of the station of the last stroke. */
  readonly at: number;
  readonly cost: number;
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

const pairsOf = (stations: readonly OpenStation[]): number => stations.reduce((set, s) => set | (1 << s.pair), 0);

/**
 * The stations that may take a stroke: every open one of its pair whose lengths still agree, and a new one unless an open
 * one takes it without being narrowed.
 */
const stationsFor = (stations: readonly OpenStation[], action: Action, option: StrokeOption, together: SearchTask['together']): readonly { readonly stations: readonly OpenStation[]; readonly at: number; readonly isNew: boolean }[] => {
  const least = option.need[1] - option.need[0];
  const most = option.tools.window[1] - option.tools.window[0];
  const found: { stations: readonly OpenStation[]; at: number; isNew: boolean }[] = [];
  let free = false;
  stations.forEach((s, at) => {
    const joined = { pair: s.pair, least: Math.max(s.least, least), most: Math.min(s.most, most) };
    if (s.pair !== action.pair || joined.least > joined.most) return;
    if (joined.least === s.least && joined.most === s.most) free = true;
    found.push({ stations: stations.map((other, i) => (i === at ? joined : other)), at, isNew: false });
  });
  if (!free && stations.every((s) => s.pair === action.pair || together(s.pair, action.pair))) found.push({ stations: [...stations, { pair: action.pair, least, most }], at: stations.length, isNew: true });
  return found;
};

/** Unbends the finished part greedily: is there any order at all? Dead ends are rare this way round. */
const anyOrder = (task: SearchTask, full: number, blocked: Blocked[]): 'yes' | 'no' | 'stopped' => {
  const dead = new Set<number>();
  const bits = task.groups.map(bitsOf);
  const visit = (mask: number): 'yes' | 'no' | 'stopped' => {
    if (mask === 0) return 'yes';
    if (dead.has(mask)) return 'no';
    if (task.stopNow()) return 'stopped';
    for (let g = task.groups.length - 1; g >= 0; g--) {
      if ((mask & bits[g]!) !== bits[g]) continue;
      const before = mask & ~bits[g]!;
      if (dead.has(before)) continue;
      const can = task.actions.some((action) => {
        if (action.group !== g) return false;
        const answer = task.answer(action, before);
        if (!answer.ok) blocked.push({ action, mask: before, conflicts: answer.conflicts });
        return answer.ok;
      });
      if (!can) continue;
      const below = visit(before);
      if (below !== 'no') return below;
    }
    dead.add(mask);
    return 'no';
  };
  return visit(full);
};

/**
 * The quickest order of strokes by the stated time model. Best-first over (bends made, how the sheet lies, pairs set up);
 * the cheap cost orders the states, and clearance is asked only of the stroke that is about to be taken. The bound is
 * admissible: each stroke left costs at least its cheapest seat, each other side up one flip, each other direction of bend
 * line one turn, each die not yet set up one station.
 */
export const search = (task: SearchTask): SearchResult => {
  const bits = task.groups.map(bitsOf);
  const full = bits.reduce((a, b) => a | b, 0);
  const blocked: Blocked[] = [];
  const possible = anyOrder(task, full, blocked);
  if (possible === 'no') return { kind: 'none', states: 0, blocked, layout: null };

  const cheapest = task.groups.map((_, g) => Math.min(...task.actions.filter((a) => a.group === g).map((a) => a.base)));
  const sideOf = task.groups.map((_, g) => task.actions.find((a) => a.group === g)!.sideUp);
  const axisOf = task.groups.map((_, g) => task.actions.find((a) => a.group === g)!.towards % 180);
  const pairsFor = task.groups.map((_, g) => task.actions.filter((a) => a.group === g).reduce((set, a) => set | (1 << a.pair), 0));
  const ahead = (mask: number, opened: number, last: Action | null): number => {
    let sum = 0;
    let flips = 0;
    let mustOpen = 0;
    const axes: number[] = last ? [last.towards % 180] : [];
    for (let g = 0; g < bits.length; g++) {
      if ((mask & bits[g]!) !== 0) continue;
      sum += cheapest[g]!;
      if (last && sideOf[g] !== last.sideUp) flips = 1;
      if (!axes.some((a) => apartBy(a, axisOf[g]!, 180) <= SAME_WAY)) axes.push(axisOf[g]!);
      // groups whose pairs are all unopened need one more; two such groups with no pair in common need two: counted once
      if ((pairsFor[g]! & opened) === 0) mustOpen = 1;
    }
    const turns = Math.max(0, axes.length - 1);
    return sum + (flips * TIME.flip + turns * TIME.turn) * task.handling + mustOpen * task.stationShare;
  };

  const queue = new FlatQueue<number>();
  const waiting: Waiting[] = [];
  const count = (mask: number): number => mask.toString(2).replaceAll('0', '').length;
  // among equal totals the one with more bends made goes first, then the plainer tool
  const push = (entry: Waiting): void => {
    const mask = entry.parent.mask | bits[entry.action.group]!;
    const f = entry.cost + ahead(mask, pairsOf(entry.stations), entry.action);
    queue.push(waiting.push(entry) - 1, f - count(mask) * 1e-6 + entry.action.plainness * 1e-8);
  };
  const root: Node = { mask: 0, planned: null, parent: null, stations: [], at: -1, cost: 0 };
  const closed = new Set<string>();
  let best: { plan: Planned[]; seconds: number } | null = null;
  let states = 0;
  let asked = 0;
  let bound = ahead(0, 0, null);
  let layoutTrouble: Conflict | null = null;

  const planOf = (node: Node): Planned[] => {
    const plan: Planned[] = [];
    for (let n: Node | null = node; n?.planned; n = n.parent) plan.unshift(n.planned);
    return plan;
  };
  const expand = (node: Node): void => {
    const last = node.planned?.action ?? null;
    for (const action of task.actions) {
      if ((node.mask & bits[action.group]!) !== 0) continue;
      const hasStation = node.stations.some((s) => s.pair === action.pair);
      if (!hasStation && !node.stations.every((s) => task.together(s.pair, action.pair))) continue;
      const change = last ? changeSeconds(last, action) * task.handling + (last.pair === action.pair ? 0 : TIME.walk) : 0;
      const cost = node.cost + action.base + change + (hasStation ? 0 : task.stationShare);
      push({ parent: node, action, option: null, cost, stations: node.stations, at: -1 });
    }
  };
  const settle = ({ parent, action, cost }: Waiting, option: StrokeOption): void => {
    const last = parent.planned?.action ?? null;
    const hasStation = parent.stations.some((s) => s.pair === action.pair);
    const dearer = task.extra(option) + task.handSetting(parent.planned?.option ?? null, option);
    for (const choice of stationsFor(parent.stations, action, option, task.together)) {
      const again = choice.isNew && hasStation ? task.stationShare : 0;
      const walk = last && last.pair === action.pair && choice.at !== parent.at ? TIME.walk : 0;
      push({ parent, action, option, cost: cost + dearer + again + walk, stations: choice.stations, at: choice.at });
    }
  };
  expand(root);
  while (queue.length > 0) {
    const f = queue.peekValue()!;
    if (best && f >= best.seconds - 1e-5) break;
    bound = Math.max(bound, Math.min(f, best?.seconds ?? Infinity));
    if ((asked++ & 31) === 0 && task.stopNow()) {
      return best
        ? { kind: 'plan', plan: best.plan, seconds: best.seconds, bound, proven: false, states }
        : { kind: 'undecided', states, bound };
    }
    const entry = waiting[queue.pop()!]!;
    const { parent, action, option } = entry;
    if (!option) {
      const answer = task.answer(action, parent.mask);
      if (answer.ok) settle(entry, answer.option);
      else blocked.push({ action, mask: parent.mask, conflicts: answer.conflicts });
      continue;
    }
    const mask = parent.mask | bits[action.group]!;
    const set = entry.stations.map((s) => `${s.pair}:${s.least.toFixed(0)}-${s.most.toFixed(0)}`);
    const stop = task.remembersStop ? `|${option.stop.x.toFixed(1)}|${option.stop.r.toFixed(1)}` : '';
    const key = `${mask}|${set[entry.at]!}|${[...set].sort().join()}|${action.sideUp}|${action.towards.toFixed(0)}${stop}`;
    if (closed.has(key)) continue;
    closed.add(key);
    states++;
    const node: Node = { mask, planned: { action, option, mask: parent.mask }, parent, stations: entry.stations, at: entry.at, cost: entry.cost };
    if (mask !== full) {
      expand(node);
      continue;
    }
    const plan = planOf(node);
    const end = task.finish(plan, node.stations.length);
    if (!end.ok) {
      layoutTrouble ??= end.conflict;
      continue;
    }
    const seconds = node.cost + end.seconds;
    if (!best || seconds < best.seconds) {
      best = { plan, seconds };
      task.onBest?.(seconds, bound);
    }
  }
  if (!best) return { kind: 'none', states, blocked, layout: layoutTrouble };
  // a plan that did not fit on the bed may have hidden another one behind the same state: then nothing is claimed
  return { kind: 'plan', plan: best.plan, seconds: best.seconds, bound: layoutTrouble ? bound : best.seconds, proven: layoutTrouble === null, states };
};

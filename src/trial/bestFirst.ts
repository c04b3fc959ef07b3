import FlatQueue from 'flatqueue';
import { type Completed, SAME_COST } from './completed.js';
import { bitsOf } from './groups.js';
import type { Images } from './images.js';
import { type Node, rootOf } from './node.js';
import { type OpenStation, stationsKey } from './openStation.js';
import { type Waiting, costBefore, mayOpen, nodeOf, taken } from './taking.js';
import type { Action, Blocked, SearchTask } from './task.js';

/** A bound on what is to come, s: the bends made, the stations that stand, the stroke made last. Never too high. */
export type Ahead = (mask: number, stations: readonly OpenStation[], last: Action | null) => number;

export interface Pass {
  /** `through`: nothing is left that could be better than the best plan. */
  readonly end: 'through' | 'states' | 'time';
  /** s: no plan takes less, as far as this pass got. */
  readonly bound: number;
  readonly states: number;
}

/** Among equal totals the plan with more strokes made goes first, then the plainer tool: far below any real difference. s */
const PER_STROKE = 1e-6;
const PER_PLAINNESS = 1e-8;
/** Looks at the clock once in so many states. */
const CLOCK = 32;
/** A station still to be set up may have any length. */
const ANY_LENGTH = { least: 0, most: Infinity };

/**
 * One pass over the plans by their bound, up to `most` states taken; whole plans go to `completed`. Nodes are kept as `images` has
 * them stand, and two that `alike` has stand alike are one.
 */
export const bestFirst = (task: SearchTask, images: Images, alike: Images, ahead: Ahead, completed: Completed, blocked: Blocked[], most: number): Pass => {
  const bits = task.groups.map(bitsOf);
  const full = bits.reduce((a, b) => a | b, 0);
  const wayOf = ({ group, gaugeSide }: Action): number => group * 2 + gaugeSide;
  const cheapest = new Map<number, number>();
  for (const action of task.actions) cheapest.set(wayOf(action), Math.min(cheapest.get(wayOf(action)) ?? Infinity, action.leastExtra));
  const queue = new FlatQueue<number>();
  const waiting: (Waiting | null)[] = [];
  const closed = new Set<string>();
  let states = 0;
  let asked = 0;
  let bound = ahead(0, [], null);

  const worth = (f: number): boolean => {
    const best = completed.best();
    if (f === Infinity) return false;
    return !best || f < best.seconds - SAME_COST;
  };
  const push = (entry: Waiting): void => {
    const { action, option, stations } = entry;
    const made = entry.parent.mask | bits[action.group]!;
    const after = images.standing(made, action);
    const stand = option || stations.some((s) => s.pair === action.pair) ? stations : [...stations, { pair: action.pair, ...ANY_LENGTH }];
    const f = entry.cost + (option ? 0 : action.leastExtra) + ahead(after.mask, stand, after.last);
    if (!worth(f)) return;
    const strokes = made.toString(2).replaceAll('0', '').length;
    queue.push(waiting.push(entry) - 1, f - strokes * PER_STROKE + action.plainness * PER_PLAINNESS);
  };
  const expand = (node: Node): void => {
    for (const action of task.actions) {
      if ((node.mask & bits[action.group]!) !== 0 || !task.allows(action, node.mask) || !mayOpen(task, node, action)) continue;
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
  const keyOf = (node: Node, { stop }: NonNullable<Waiting['option']>): string => {
    const { mask, last } = alike.standing(node.mask, node.last!);
    const placed = task.remembersStop ? `|${stop.x.toFixed(1)}|${stop.r.toFixed(1)}` : '';
    return `${mask}|${Math.round(last.towards) % 360}|${stationsKey(node.stations, node.at)}|${last.sideUp}${placed}${node.held ? `|${node.held.key}` : ''}`;
  };

  expand(rootOf(task.holding?.start ?? null));
  while (queue.length > 0) {
    const f = queue.peekValue()!;
    if (!worth(f)) break;
    // past a plan that did not fit, dearer ones prove nothing of those that it may hide
    if (completed.trouble() === null) bound = Math.max(bound, Math.min(f, completed.hidden()));
    if (states >= most) return { end: 'states', bound, states };
    if (asked++ % CLOCK === 0 && task.stopNow()) return { end: 'time', bound, states };
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
    const node = nodeOf(task, images, entry, held);
    const key = keyOf(node, option);
    if (closed.has(key)) continue;
    closed.add(key);
    states++;
    if (node.mask === full) completed.take(node, bound);
    else expand(node);
  }
  return { end: 'through', bound, states };
};

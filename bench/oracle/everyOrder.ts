import type { Leg } from './leg.js';
import { type Problem, handSeconds } from './problem.js';
import { WALK, changeOf } from './timeModel.js';

/** A station that an order has set up: tool lengths that suit all strokes made on it so far. mm */
interface Stand {
  readonly pair: number;
  readonly least: number;
  readonly most: number;
}

interface State {
  readonly mask: number;
  readonly stands: readonly Stand[];
  readonly at: number;
  readonly last: Leg | null;
  readonly cost: number;
  readonly before: State | null;
}

export interface BestOrder {
  /** s, without the batch's share. */
  readonly seconds: number;
  readonly legs: readonly Leg[];
  readonly stations: number;
  readonly states: number;
}

/** Everything about a state that what follows can ask: two with one key are interchangeable but for their cost. */
const keyOf = ({ stands, at, last }: State): string => {
  const names = stands.map((s) => `${s.pair}:${s.least.toFixed(4)}:${s.most.toFixed(4)}`);
  const stop = last!.stop ? `${last!.stop.x.toFixed(3)},${last!.stop.r.toFixed(3)}` : '-';
  return `${last!.sideUp}${last!.towards.toFixed(3)}|${stop}|${names[at]!}|${[...names].sort().join(' ')}`;
};

/** A state and one more stroke on each station that can take it, and on a new one. */
const after = (problem: Problem, state: State, leg: Leg): State[] => {
  const { last, stands } = state;
  const change = last ? changeOf(last, leg) * problem.handling + handSeconds(problem, last.stop, leg.stop) : 0;
  const make = (next: readonly Stand[], at: number, opened: number): State => ({
    mask: state.mask | problem.bits[leg.group]!, stands: next, at, last: leg, before: state,
    cost: state.cost + leg.seconds + change + (last && at !== state.at ? WALK * problem.handling : 0) + opened * problem.share,
  });
  const found = stands.flatMap((s, i) => {
    const joined = { pair: s.pair, least: Math.max(s.least, leg.least), most: Math.min(s.most, leg.most) };
    if (s.pair !== leg.pair || joined.least > joined.most) return [];
    return [make(stands.map((other, k) => (k === i ? joined : other)), i, 0)];
  });
  if (stands.every((s) => s.pair === leg.pair || problem.together(s.pair, leg.pair))) {
    found.push(make([...stands, { pair: leg.pair, least: leg.least, most: leg.most }], stands.length, 1));
  }
  return found;
};

/**
 * The quickest order by subset dynamic programming, stroke by stroke: every state that any order reaches is kept, with no bound,
 * no dominance but equality, nothing left for later. Null when no order makes all bends.
 */
export const everyOrder = (problem: Problem): BestOrder | null => {
  const layers = new Map<number, Map<string, State>>([[0, new Map([['', { mask: 0, stands: [], at: -1, last: null, cost: 0, before: null }]])]]);
  let states = 0;
  // a stroke only adds bends, so a larger number is never followed by a smaller one
  for (let mask = 0; mask < problem.full; mask++) {
    const layer = layers.get(mask);
    if (!layer) continue;
    layers.delete(mask);
    states += layer.size;
    for (const leg of problem.legs(mask)) {
      const to = mask | problem.bits[leg.group]!;
      let next = layers.get(to);
      if (!next) layers.set(to, (next = new Map()));
      for (const state of layer.values()) {
        for (const reached of after(problem, state, leg)) {
          const key = keyOf(reached);
          const other = next.get(key);
          if (!other || reached.cost < other.cost) next.set(key, reached);
        }
      }
    }
  }
  const ends = [...(layers.get(problem.full)?.values() ?? [])];
  if (ends.length === 0) return null;
  const best = ends.reduce((a, b) => (b.cost < a.cost ? b : a));
  const legs: Leg[] = [];
  for (let s: State = best; s.last; s = s.before!) legs.unshift(s.last);
  return { seconds: best.cost, legs, stations: best.stands.length, states: states + ends.length };
};

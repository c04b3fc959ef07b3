import { anyOrder } from './anyOrder.js';
import { type Ahead, bestFirst } from './bestFirst.js';
import { boundAhead } from './bound.js';
import { SAME_COST, createCompleted } from './completed.js';
import type { Conflict } from './conflict.js';
import { firstPlan } from './firstPlan.js';
import { bitsOf } from './groups.js';
import { imagesOf } from './images.js';
import { pairsOf } from './openStation.js';
import type { Blocked, Planned, SearchTask } from './task.js';
import { timeToGo } from './toGo.js';

export type SearchResult =
  | { readonly kind: 'plan'; readonly plan: readonly Planned[]; readonly seconds: number; readonly bound: number; readonly proven: boolean; readonly states: number }
  | { readonly kind: 'none'; readonly states: number; readonly blocked: readonly Blocked[]; readonly layout: Conflict | null }
  | { readonly kind: 'undecided'; readonly states: number; readonly bound: number };

/** States taken with the cheap bound before the dear one is worked out. */
const CHEAPLY = 200;
/** Folds looked at, at most, for the dear bound: more cost more than it saves. */
const MOST_FOLDS = 2000;
/** With so few folds every pair is asked in each. */
const FEW_FOLDS = 150;

/**
 * The quickest order of strokes by the stated time model. Best-first over (bends made, how the sheet lies, stations set up);
 * a bound orders the states, and clearance is asked only of the stroke that is about to be taken. Begins with the plan that
 * unbending gives, so that there is one whenever time ends; a search that turns out long works out a better bound first.
 */
export const search = (task: SearchTask): SearchResult => {
  const full = task.groups.map(bitsOf).reduce((a, b) => a | b, 0);
  const blocked: Blocked[] = [];
  const alike = imagesOf(task);
  const order = anyOrder(task, alike, full, blocked);
  if (order === 'none') return { kind: 'none', states: 0, blocked, layout: null };

  const asItIs = imagesOf({ ...task, symmetries: [] });
  // a limit on the plan knows bends by name
  const images = task.holding ? asItIs : alike;
  const completed = createCompleted(task, images);
  if (order !== 'stopped' && !task.holding) {
    const first = firstPlan(task, asItIs, order);
    if (first) completed.take(first, 0);
    // its own layout may fail where another plan's stands: only what the proof of the best meets counts against `proven`
    completed.afresh();
  }
  const cheap = boundAhead(task);
  const simple: Ahead = (mask, stations, last) => cheap(mask, pairsOf(stations), last);
  let pass = bestFirst(task, images, alike, simple, completed, blocked, CHEAPLY);
  let { states } = pass;
  if (pass.end === 'states') {
    const roughly = timeToGo(task, images, MOST_FOLDS, false);
    const known = roughly && roughly.folds <= FEW_FOLDS ? timeToGo(task, images, FEW_FOLDS, true) ?? roughly : roughly;
    completed.afresh();
    const { bound } = pass;
    pass = bestFirst(task, images, alike, known ? (mask, stations, last) => known.seconds(mask, last, stations) : simple, completed, blocked, Infinity);
    pass = { ...pass, bound: Math.max(bound, pass.bound) };
    states += pass.states;
  }
  const { bound, end } = pass;
  const best = completed.best();
  if (end === 'time') return best ? { kind: 'plan', ...best, bound, proven: false, states } : { kind: 'undecided', states, bound };
  if (!best) return { kind: 'none', states, blocked, layout: completed.trouble() };
  // a plan that did not fit on the bed may have hidden another one behind the same state: then nothing is claimed
  const proven = completed.trouble() === null && completed.saved() === 0 && best.seconds <= completed.hidden() + SAME_COST;
  return { kind: 'plan', ...best, bound: proven ? best.seconds : Math.min(bound, best.seconds) - completed.saved(), proven, states };
};

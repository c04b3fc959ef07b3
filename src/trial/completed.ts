import type { Conflict } from './conflict.js';
import type { Images } from './images.js';
import { type Node, planOf, stoodOf } from './node.js';
import type { Planned, SearchTask } from './task.js';

/** Costs that differ by less are equal: sums of the same pieces in another order. s */
export const SAME_COST = 1e-5;

/** The whole plans that a search has met: the best of them, and what their layouts say of those that were not met. */
export interface Completed {
  readonly take: (node: Node, bound: number) => void;
  readonly best: () => { readonly plan: readonly Planned[]; readonly seconds: number } | null;
  readonly trouble: () => Conflict | null;
  /** Nothing is known of plans past this, s: see `take`. */
  readonly hidden: () => number;
  /** s: the most that a layout made a plan cheaper than its strokes were (a raised die leaves less to open). Others' bounds may be too high by as much. */
  readonly saved: () => number;
  /** Forgets all but the best plan: a new pass meets the rest again. */
  readonly afresh: () => void;
}

export const createCompleted = (task: SearchTask, images: Images): Completed => {
  let best: { plan: readonly Planned[]; seconds: number } | null = null;
  let trouble: Conflict | null = null;
  let hidden = Infinity;
  let saved = 0;
  return {
    best: () => best, trouble: () => trouble, hidden: () => hidden, saved: () => saved,
    afresh: () => {
      trouble = null;
      hidden = Infinity;
    },
    take: (node, bound) => {
      const plan = planOf(task, images, node);
      const end = plan ? task.finish(plan, stoodOf(node)) : null;
      // a layout may make a plan dearer (what stands on a raised die may lose its stop): then another plan of as many strokes'
      // seconds, closed behind the same state, may be the better one, and nothing is known past the least of their own seconds
      if (!plan || !end) {
        hidden = Math.min(hidden, node.cost);
        return;
      }
      if (!end.ok) {
        trouble ??= end.conflict;
        return;
      }
      const seconds = node.cost + end.seconds;
      if (end.seconds < -SAME_COST) saved = Math.max(saved, -end.seconds);
      if (end.seconds > SAME_COST) hidden = Math.min(hidden, node.cost);
      if (best && seconds >= best.seconds) return;
      best = { plan, seconds };
      task.onBest?.(seconds, bound);
    },
  };
};

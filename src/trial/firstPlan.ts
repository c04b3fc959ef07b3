import type { Order } from './anyOrder.js';
import type { Images } from './images.js';
import { type Node, rootOf } from './node.js';
import { type Waiting, costBefore, mayOpen, nodeOf, taken } from './taking.js';
import type { SearchTask } from './task.js';

/** A plan at once: the order that unbending found, each stroke put where it costs least then and there. Null where none is. The order names its folds, so they stay as they are. */
export const firstPlan = (task: SearchTask, asItIs: Images, order: Order): Node | null => {
  let node: Node = rootOf(null);
  for (const { group, mask } of order) {
    const ways = task.actions
      .filter((a) => a.group === group && task.allows(a, mask) && mayOpen(task, node, a))
      .map((action) => ({ action, cost: costBefore(task, node, action) + action.leastExtra }))
      .sort((a, b) => a.cost - b.cost || a.action.plainness - b.action.plainness);
    let best: Waiting | null = null;
    for (const { action, cost } of ways) {
      if (best && cost >= best.cost) break;
      const answer = task.answer(action, mask);
      if (!answer.ok) continue;
      for (const way of taken(task, { parent: node, action, cost: cost - action.leastExtra }, answer.option)) {
        if (!best || way.cost < best.cost) best = way;
      }
    }
    if (!best) return null;
    node = nodeOf(task, asItIs, best, null);
  }
  return node;
};

import type { Blocked, SearchTask } from './task.js';
import { bitsOf } from './groups.js';
import type { Images } from './images.js';

/** An order of strokes, the first to be made first: each with the bends made before it. */
export type Order = readonly { readonly group: number; readonly mask: number }[];

/** Unbends the finished part greedily: is there any order at all? Dead ends are rare this way round. */
export const anyOrder = (task: SearchTask, images: Images, full: number, blocked: Blocked[]): Order | 'none' | 'stopped' => {
  const dead = new Set<number>();
  const bits = task.groups.map(bitsOf);
  const order: { group: number; mask: number }[] = [];
  const actionsOf = task.groups.map((_, g) => task.actions.filter((a) => a.group === g));
  // the pair that served last is asked first: fewer questions, and fewer stations in the plan that comes of it
  let lastPair = -1;
  const can = (g: number, mask: number): boolean => {
    const mine = actionsOf[g]!;
    for (const action of [...mine.filter((a) => a.pair === lastPair), ...mine.filter((a) => a.pair !== lastPair)]) {
      if (!task.allows(action, mask)) continue;
      const answer = task.answer(action, mask);
      if (answer.ok) {
        lastPair = action.pair;
        return true;
      }
      blocked.push({ action, mask, conflicts: answer.conflicts });
    }
    return false;
  };
  const visit = (mask: number): 'yes' | 'no' | 'stopped' => {
    if (mask === 0) return 'yes';
    const stands = images.fold(mask).mask;
    if (dead.has(stands)) return 'no';
    if (task.stopNow()) return 'stopped';
    for (let g = task.groups.length - 1; g >= 0; g--) {
      if ((mask & bits[g]!) !== bits[g]) continue;
      const before = mask & ~bits[g]!;
      if (dead.has(images.fold(before).mask)) continue;
      const may = can(g, before);
      // of a large part the questions about one stroke take so long that the clock is looked at after each
      if (task.stopNow()) return 'stopped';
      if (!may) continue;
      const below = visit(before);
      if (below === 'yes') order.push({ group: g, mask: before });
      if (below !== 'no') return below;
    }
    dead.add(stands);
    return 'no';
  };
  const found = visit(full);
  return found === 'yes' ? order : found === 'no' ? 'none' : 'stopped';
};

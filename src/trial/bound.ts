import { bitsOf } from './groups.js';
import { type Action, type SearchTask, sameAxis } from './task.js';
import { TIME } from './time.js';

/**
 * The least time that the strokes not yet made can take: s, from the bends made (bits), the pairs set up (bits) and the
 * last stroke. Admissible: each stroke costs at least its cheapest seat, another side up one flip, each other direction
 * of bend line one turn, a stroke that no pair at hand serves one station.
 */
export const boundAhead = (task: SearchTask): ((mask: number, opened: number, last: Action | null) => number) => {
  const bits = task.groups.map(bitsOf);
  const mine = task.groups.map((_, g) => task.actions.filter((a) => a.group === g));
  const cheapest = mine.map((actions) => Math.min(...actions.map((a) => a.base + a.leastExtra)));
  const sideOf = mine.map((actions) => actions[0]!.sideUp);
  const pairsFor = mine.map((actions) => actions.reduce((set, a) => set | (1 << a.pair), 0));
  // directions of bend lines, numbered
  const axes: number[] = [];
  const axisOf = (towards: number): number => {
    const known = axes.findIndex((a) => sameAxis(a, towards));
    return known >= 0 ? known : axes.push(towards) - 1;
  };
  const groupAxis = mine.map((actions) => axisOf(actions[0]!.towards));
  return (mask, opened, last) => {
    let sum = 0;
    let turned = last ? 1 << axisOf(last.towards) : 0;
    let [a, b] = [last?.sideUp === 'A', last?.sideUp === 'B'];
    let mustOpen = false;
    for (let g = 0; g < bits.length; g++) {
      if ((mask & bits[g]!) !== 0) continue;
      sum += cheapest[g]!;
      if (sideOf[g] === 'A') a = true;
      else b = true;
      turned |= 1 << groupAxis[g]!;
      mustOpen ||= (pairsFor[g]! & opened) === 0;
    }
    const turns = Math.max(0, axes.reduce((count, _, i) => count + ((turned >> i) & 1), 0) - 1);
    return sum + ((a && b ? TIME.flip : 0) + turns * TIME.turn) * task.handling + (mustOpen ? task.stationShare : 0);
  };
};

import { signedArea } from '../geometry/index.js';
import type { Part } from '../sheet/index.js';

/** The side of a bend with less metal on it: of a hem its flange, while the large plate lies still. */
export const smallerSide = (part: Part, bend: number): 0 | 1 => {
  const { sides } = part.bends[bend]!;
  const areaOf = (start: number): number => {
    const seen = new Set([start]);
    const queue = [start];
    for (let plate = queue.shift(); plate !== undefined; plate = queue.shift()) {
      part.bends.forEach((other, i) => {
        if (i === bend) return;
        const end = other.sides.findIndex((s) => s.plate === plate);
        if (end < 0 || seen.has(other.sides[1 - end]!.plate)) return;
        seen.add(other.sides[1 - end]!.plate);
        queue.push(other.sides[1 - end]!.plate);
      });
    }
    return [...seen].reduce((sum, plate) => sum + Math.abs(signedArea(part.plates[plate]!.outline)), 0);
  };
  return areaOf(sides[1].plate) <= areaOf(sides[0].plate) ? 1 : 0;
};

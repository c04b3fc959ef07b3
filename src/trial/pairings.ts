import type { Pair } from './bodies.js';
import type { TrialInput } from './input.js';
import { standTogether } from './layout.js';
import type { Tooling } from './tooling.js';
import { tipAt } from './stroke.js';

/** Which pairs can stand under one ram, worked out once for each two. */
export const pairings = ({ pairs, forming, closing, sheet }: Tooling, { machine, rack }: TrialInput): ((a: number, b: number) => boolean) => {
  const known = new Map<number, boolean>();
  const closed = Math.max(0, ...sheet.part.bends.filter((b) => b.hem).map((b) => 2 * (sheet.part.thickness + b.insideRadius)));
  const lowest = (pair: Pair): number => pair.punch.height + Math.max(...forming.filter((f) => f.die.id === pair.die.id).map(({ bend, offset, setup }) => (bend ? tipAt(bend, bend.bendAngleUnderLoad) : setup.thickness - offset!.form.height)), ...(closing.some((i) => pairs[i]!.die.id === pair.die.id) ? [closed] : []));
  return (a, b) => {
    const key = Math.min(a, b) * pairs.length + Math.max(a, b);
    let can = known.get(key);
    if (can === undefined) known.set(key, (can = standTogether(machine, rack, [pairs[a]!, pairs[b]!], [lowest(pairs[a]!), lowest(pairs[b]!)])));
    return can;
  };
};

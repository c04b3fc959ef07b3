import type { Machine } from '../shop/index.js';
import { pairOf } from './bodies.js';
import { earsOf } from './ears.js';
import type { Group } from './groups.js';
import type { Blocked } from './task.js';
import { bendLength } from './strokeLength.js';
import type { Tooling } from './tooling.js';

/** What alike strokes share: the search takes them for one another where the part is symmetric, so they must have the same tools. */
const likeness = ({ sheet: { part } }: Tooling, group: Group): string =>
  group.bends.map((b) => `${part.bends[b]!.bendAngle.toFixed(1)} ${bendLength(part, b).toFixed(1)}`).sort().join();

const tools = (tooling: Tooling, pair: number): string => `${tooling.pairs[pair]!.punch.id}/${tooling.pairs[pair]!.dieKey}`;

/** Strokes that the punch alone forbids, near the ends of the bend line only: likeness and tools of each, in either facing. */
const failedAtEnds = (tooling: Tooling, groups: readonly Group[], blocked: readonly Blocked[]): ReadonlySet<string> =>
  new Set(blocked
    .filter(({ conflicts }) => conflicts.length > 0 && conflicts.every((c) => c.atEnds))
    .map(({ action }) => `${likeness(tooling, groups[action.group]!)}|${tools(tooling, action.pair)}`));

/**
 * The same tooling with ear segments at both ends of the punches that failed near the ends of a bend line, for those strokes
 * and all alike; null when the rack has none that could help.
 */
export const withEars = (tooling: Tooling, machine: Machine, groups: readonly Group[], blocked: readonly Blocked[]): Tooling | null => {
  const pairs = [...tooling.pairs];
  const eared = new Map<number, readonly number[]>();
  const earedOf = (index: number): readonly number[] => {
    const known = eared.get(index);
    if (known) return known;
    const { punch, die, punchFacing, dieTop } = tooling.pairs[index]!;
    const found = earsOf(punch, punchFacing).map((ears) => pairs.push(pairOf(machine, punch, die, punchFacing, dieTop - die.height, ears)) - 1);
    eared.set(index, found);
    return found;
  };
  const failed = failedAtEnds(tooling, groups, blocked);
  const more = new Map<number, readonly number[]>();
  for (const group of groups) {
    const found = tooling.pairsOf[group.bends[0]!]!.filter((p) => failed.has(`${likeness(tooling, group)}|${tools(tooling, p)}`)).flatMap(earedOf);
    for (const bend of group.bends) more.set(bend, found);
  }
  if ([...more.values()].every((found) => found.length === 0)) return null;
  return { ...tooling, pairs, pairsOf: tooling.pairsOf.map((list, bend) => [...list, ...(more.get(bend) ?? [])]) };
};

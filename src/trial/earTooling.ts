import type { Machine } from '../shop/index.js';
import { pairOf } from './bodies.js';
import { earsOf } from './ears.js';
import type { Group } from './groups.js';
import type { Blocked } from './task.js';
import type { Tooling } from './tooling.js';

/** Strokes that the punch alone forbids, and near the ends of the bend line only: by group, the pairs (index) that failed so. */
const failedAtEnds = (blocked: readonly Blocked[]): ReadonlyMap<number, ReadonlySet<number>> => {
  const failed = new Map<number, Set<number>>();
  for (const { action, conflicts } of blocked) {
    if (conflicts.length === 0 || !conflicts.every((c) => c.atEnds)) continue;
    failed.set(action.group, (failed.get(action.group) ?? new Set()).add(action.pair));
  }
  return failed;
};

/**
 * The same tooling with ear segments at both ends of the punches that failed near the ends of a bend line, for those strokes
 * alone; null when the rack has none that could help.
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
  const failed = failedAtEnds(blocked);
  const more = new Map<number, readonly number[]>();
  groups.forEach((group, g) => {
    const found = [...(failed.get(g) ?? [])].flatMap(earedOf);
    for (const bend of group.bends) more.set(bend, found);
  });
  if ([...more.values()].every((found) => found.length === 0)) return null;
  return { ...tooling, pairs, pairsOf: tooling.pairsOf.map((list, bend) => [...list, ...(more.get(bend) ?? [])]) };
};

import type { Developed } from '../sheet/index.js';

/** One step of a walk through the tree: over `bend`, from plate `from` to plate `to`. */
export interface Hop {
  readonly bend: number;
  readonly from: number;
  readonly to: number;
}

/** The way from the plate next to a bend (on one side of it) to a plate. */
export interface Walk {
  readonly side: 0 | 1;
  readonly plate: number;
  readonly hops: readonly Hop[];
}

/** For each plate on each side of a bend, the hops from the plate next to the bend. */
export const walks = (sheet: Developed, bend: number): readonly Walk[] => {
  const found: Walk[] = [];
  for (const side of [0, 1] as const) {
    const start = sheet.part.bends[bend]!.sides[side].plate;
    const queue: { plate: number; hops: readonly Hop[] }[] = [{ plate: start, hops: [] }];
    for (let here = queue.shift(); here; here = queue.shift()) {
      found.push({ side, ...here });
      const last = here.hops[here.hops.length - 1]?.bend ?? bend;
      for (const [i, other] of sheet.part.bends.entries()) {
        if (i === last) continue;
        const end = other.sides.findIndex((s) => s.plate === here.plate);
        if (end < 0) continue;
        const to = other.sides[1 - end]!.plate;
        queue.push({ plate: to, hops: [...here.hops, { bend: i, from: here.plate, to }] });
      }
    }
  }
  return found;
};

/** The walks that make one branch, and the bends that its poses depend on. */
export interface BranchWalks {
  readonly walks: readonly Walk[];
  readonly bends: readonly number[];
}

/** All walks from a bend, parted where the tree forks. */
export const branchWalks = (all: readonly Walk[]): readonly BranchWalks[] => {
  const children = new Map<string, number>();
  const nameOf = (side: number, plate: number): string => `${side}|${plate}`;
  for (const { side, hops } of all) {
    const last = hops[hops.length - 1];
    if (last) children.set(nameOf(side, last.from), (children.get(nameOf(side, last.from)) ?? 0) + 1);
  }
  const found = new Map<string, Walk[]>();
  for (const walk of all) {
    const fork = [...walk.hops].reverse().find((hop) => children.get(nameOf(walk.side, hop.from))! > 1);
    const root = nameOf(walk.side, fork ? fork.to : -1);
    found.set(root, [...(found.get(root) ?? []), walk]);
  }
  return [...found.values()].map((walks) => ({ walks, bends: [...new Set(walks.flatMap((w) => w.hops.map((hop) => hop.bend)))] }));
};

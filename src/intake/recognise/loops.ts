import { type Vec3, length3, sub3 } from '../../geometry/index.js';
import type { Brep, Edge, EdgeUse } from '../step/brep.js';
import { SAME_POINT } from '../tolerances.js';

/** An edge as its loop runs along it. */
export interface Run {
  readonly edge: number;
  readonly from: Vec3;
  readonly to: Vec3;
  /** From `from` to `to`, both included. */
  readonly points: readonly Vec3[];
  readonly curve: Edge['curve'];
  /** +1 along the edge, -1 against it. */
  readonly sense: 1 | -1;
}

export const runOf = (brep: Brep, use: EdgeUse): Run => {
  const edge = brep.edges[use.edge]!;
  return use.forward
    ? { edge: use.edge, from: edge.from, to: edge.to, points: edge.points, curve: edge.curve, sense: 1 }
    : { edge: use.edge, from: edge.to, to: edge.from, points: [...edge.points].reverse(), curve: edge.curve, sense: -1 };
};

const inOrder = (runs: readonly Run[]): boolean => runs.every((run, i) => length3(sub3(run.to, runs[(i + 1) % runs.length]!.from)) < SAME_POINT);

/**
 * The boundary of several faces taken as one, chained into loops: edges used both ways lie inside and fall out. The
 * loops keep the faces' sense, metal to the left seen from outside.
 */
export const boundaryLoops = (brep: Brep, faces: readonly number[]): Run[][] => {
  const uses = faces.flatMap((f) => brep.faces[f]!.loops.flat());
  const count = new Map<number, number>();
  for (const use of uses) count.set(use.edge, (count.get(use.edge) ?? 0) + 1);
  const loops: Run[][] = [];
  const left: Run[] = [];
  for (const uses of faces.flatMap((f) => brep.faces[f]!.loops)) {
    const runs = uses.filter((use) => count.get(use.edge) === 1).map((use) => runOf(brep, use));
    // most loops are whole and in order as they stand; only the others have to be chained anew
    if (runs.length > 0 && runs.length === uses.length && inOrder(runs)) loops.push(runs);
    else left.push(...runs);
  }
  while (left.length > 0) {
    const loop = [left.shift()!];
    const gap = (run: Run): number => length3(sub3(run.from, loop[loop.length - 1]!.to));
    for (;;) {
      const home = gap(loop[0]!);
      let [next, least] = [-1, Infinity];
      left.forEach((run, i) => {
        const g = gap(run);
        if (g < least) [next, least] = [i, g];
      });
      // the nearest beginning is the next edge, since corners are shared; a loop is closed when its own is the nearest
      if (next < 0 || home <= least) break;
      loop.push(...left.splice(next, 1));
    }
    loops.push(loop);
  }
  return loops;
};

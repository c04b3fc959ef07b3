import { dot3, length3, sub3 } from '../../geometry/index.js';
import type { Brep, Edge } from '../step/brep.js';
import { SAME_POINT, TANGENT } from '../tolerances.js';
import { outwardAt } from './outward.js';

export interface Healed {
  readonly brep: Brep;
  /** Faces narrower than the modelling tolerance that were taken away, with their width in mm. */
  readonly slivers: readonly { readonly face: number; readonly width: number }[];
}

const lengthOf = (edge: Edge): number => edge.points.slice(1).reduce((sum, p, i) => sum + length3(sub3(p, edge.points[i]!)), 0);

/** Whether the faces on the sliver's two sides would go over into each other smoothly without it, as a skin into a bend. */
const smoothAcross = (brep: Brep, sliver: number, [e, f]: readonly [number, number], users: readonly (readonly number[])[]): boolean => {
  const [p, q] = [e, f].map((edge) => {
    const face = users[edge]!.find((u) => u !== sliver);
    return face === undefined ? undefined : outwardAt(brep.faces[face]!.surface, brep.edges[edge]!.from);
  });
  return p !== undefined && q !== undefined && length3(sub3(p, q)) < TANGENT;
};

/**
 * Closes faces too narrow to be meant: steps of a few hundred-thousandths of a millimetre between two skins, left by
 * drawing programs. Their two long edges become one; the faces keep their numbers, with no loops.
 */
export const healSlivers = (brep: Brep, users: readonly (readonly number[])[]): Healed => {
  const replaced = new Map<number, { edge: number; flip: boolean }>();
  const dropped = new Set<number>();
  const slivers: { face: number; width: number }[] = [];
  const lengths = brep.edges.map(lengthOf);
  brep.faces.forEach((face, index) => {
    const uses = face.loops.flat();
    const byLength = uses.map((u) => ({ edge: u.edge, length: lengths[u.edge]! })).sort((a, b) => b.length - a.length);
    const [first, second] = byLength;
    if (!first || !second || first.edge === second.edge) return;
    const width = face.area / first.length;
    if (width > SAME_POINT || second.length < 0.9 * first.length || byLength.slice(2).some((e) => e.length > 2 * SAME_POINT)) return;
    const [a, b] = [brep.edges[first.edge]!, brep.edges[second.edge]!];
    if (!smoothAcross(brep, index, [first.edge, second.edge], users)) return;
    replaced.set(second.edge, { edge: first.edge, flip: dot3(sub3(a.to, a.from), sub3(b.to, b.from)) < 0 });
    for (const short of byLength.slice(2)) dropped.add(short.edge);
    slivers.push({ face: index, width });
  });
  if (slivers.length === 0) return { brep, slivers };
  const gone = new Set(slivers.map((s) => s.face));
  const faces = brep.faces.map((face, index) => ({
    ...face,
    loops: gone.has(index)
      ? []
      : face.loops.map((loop) =>
          loop
            .filter((use) => !dropped.has(use.edge))
            .map((use) => {
              const other = replaced.get(use.edge);
              return other ? { edge: other.edge, forward: other.flip ? !use.forward : use.forward } : use;
            }),
        ),
  }));
  return { brep: { ...brep, faces }, slivers };
};

import { type Rigid, type Vec3, add3, cross3, dot3, length3, scale3, sub3, unit3 } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import type { Joint } from './joints.js';
import type { Slab } from './slabs.js';
import type { Branch } from './tree.js';
import { tangentPoint } from './zone.js';

/** A slab with its A side chosen and its frame in the middle plane, z out of the A side. */
export interface Placed {
  readonly slab: number;
  readonly aSide: 0 | 1;
  readonly frame: Rigid;
  readonly parent?: { readonly slab: number; readonly joint: Joint; readonly axis: Vec3 };
}

export const endOf = (joint: Joint, slab: number): 0 | 1 => (joint.slabs[0] === slab ? 0 : 1);

/** For each slab of the tree the side that is A, once the root's is chosen: the inside of a bend is one face of the sheet. */
const aSides = (branches: readonly Branch[], root: 0 | 1): Map<number, 0 | 1> => {
  const sides = new Map<number, 0 | 1>();
  for (const { slab, parent } of branches) {
    if (!parent) sides.set(slab, root);
    else {
      const [own, other] = [endOf(parent.joint, slab), endOf(parent.joint, parent.slab)];
      const insideIsA = parent.joint.insides[other] === sides.get(parent.slab);
      const inside = parent.joint.insides[own];
      sides.set(slab, insideIsA ? inside : inside === 0 ? 1 : 0);
    }
  }
  return sides;
};

/** Degrees bent towards the A side less those bent towards B. */
const towardsA = (branches: readonly Branch[], sides: ReadonlyMap<number, 0 | 1>): number =>
  branches.reduce((sum, { parent }) => {
    if (!parent) return sum;
    const { joint } = parent;
    return sum + (joint.insides[endOf(joint, parent.slab)] === sides.get(parent.slab) ? joint.angle : -joint.angle);
  }, 0);

/** The root's x axis: along its longest straight edge. */
const longestEdge = (brep: Brep, faces: readonly number[]): Vec3 => {
  let best: Vec3 = [0, 0, 0];
  for (const use of faces.flatMap((f) => brep.faces[f]!.loops.flat())) {
    const edge = brep.edges[use.edge]!;
    const run = sub3(edge.to, edge.from);
    // longer by more than rounding, so that equal edges do not change places with noise
    if (edge.curve.kind === 'line' && length3(run) > length3(best) + 1e-3) best = run;
  }
  return best;
};

/** mm along the axis where the joint's edges begin. */
const jointStart = (brep: Brep, joint: Joint, axis: Vec3): number => {
  const edges =
    joint.drawn.kind === 'round' ? joint.drawn.contacts.flat().map((c) => c.edge) : joint.drawn.edges.flatMap((set) => [...set]);
  const ends = edges.flatMap((e) => [brep.edges[e]!.from, brep.edges[e]!.to]);
  return Math.min(...ends.map((p) => dot3(sub3(p, joint.centre), axis)));
};

/**
 * Frames for the slabs of a tree, in its order. The A side is the one that most of the turning goes towards (with
 * nothing between them: the root's side that looks along the greater coordinates).
 */
export const placeSlabs = (brep: Brep, slabs: readonly Slab[], branches: readonly Branch[], thickness: number): Placed[] => {
  const root = branches[0]!.slab;
  const first = aSides(branches, 0);
  const balance = towardsA(branches, first);
  const n = slabs[root]!.sides[0].normal;
  const upward = n[2] + 1e-3 * n[1] + 1e-6 * n[0] > 0;
  const useFirst = Math.abs(balance) > 1e-6 ? balance > 0 : upward;
  const sides = useFirst ? first : aSides(branches, 1);
  return branches.map(({ slab, parent }) => {
    const aSide = sides.get(slab)!;
    const { normal: z, faces, origin } = slabs[slab]!.sides[aSide];
    if (!parent) {
      const back = slabs[slab]!.sides[aSide === 0 ? 1 : 0];
      const real = dot3(sub3(origin, back.origin), z);
      const edge = longestEdge(brep, faces);
      const flat = sub3(edge, scale3(z, dot3(edge, z)));
      const x = length3(flat) > 0 ? unit3(flat) : unit3(cross3(Math.abs(z[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0], z));
      return { slab, aSide, frame: { x, y: cross3(z, x), z, o: add3(origin, scale3(z, -real / 2)) } };
    }
    const { joint } = parent;
    const [own, other] = [endOf(joint, slab), endOf(joint, parent.slab)];
    // u = v x w with v out of the parent's metal and w out of its A side
    const axis = unit3(cross3(joint.outs[other], slabs[parent.slab]!.sides[sides.get(parent.slab)!].normal));
    const o = tangentPoint(joint, own, axis, thickness, jointStart(brep, joint, axis));
    return { slab, aSide, frame: { x: axis, y: cross3(z, axis), z, o }, parent: { ...parent, axis } };
  });
};

import { type Contour, type Vec2, type Vec3, apply, cross3, dot3, invert, reversed, sub3, turn, unit3 } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { type Placed, endOf } from './frames.js';
import type { Joint } from './joints.js';
import { type Run, boundaryLoops } from './loops.js';
import { type Target, moveEdges } from './moveEdges.js';
import { type Corner, planeCorners, toContour } from './outline.js';
import { outwardAt } from './outward.js';
import type { Slab } from './slabs.js';
import { type SharedMetal, smallerMetal } from './smallerMetal.js';
import { tangentPoint } from './zone.js';

/** A slab's metal in its own frame. */
export interface PlateMetal {
  readonly metal: SharedMetal;
  readonly approximated: number;
  /** Bosses or studs that stand on a skin and were left out. */
  readonly feet: number;
  /** For each sharp joint on the slab, where its edge now lies: intervals along the joint's axis (mm from its centre). */
  readonly spans: ReadonlyMap<Joint, readonly (readonly [number, number])[]>;
}

/** A sharp joint on a slab, with the direction along its axis. */
export interface SharpEnd {
  readonly joint: Joint;
  readonly axis: Vec3;
}

const targetOf = (placed: Placed, { joint, axis }: SharpEnd, thickness: number): Target => {
  const inverse = invert(placed.frame);
  const flat = (v: Vec3): Vec2 => [v[0], v[1]];
  const end = endOf(joint, placed.slab);
  return {
    at: flat(apply(inverse, tangentPoint(joint, end, axis, thickness, 0))),
    out: flat(turn(inverse, joint.outs[end])),
    along: flat(turn(inverse, axis)),
  };
};

export const overlaps = (a: readonly (readonly [number, number])[], b: readonly (readonly [number, number])[]): (readonly [number, number])[] =>
  a.flatMap(([a0, a1]) => b.map(([b0, b1]) => [Math.max(a0, b0), Math.min(a1, b1)] as const)).filter(([x, y]) => y > x);

/**
 * Whether a loop of a skin is the foot of something that stands on it (a boss, a stud): its walls face the skin. The
 * metal goes on under it, so it is no cut-out.
 */
const isFoot = (brep: Brep, users: readonly (readonly number[])[], faces: readonly number[], normal: Vec3, loop: readonly Run[]): boolean =>
  loop.some((run) => {
    const wall = users[run.edge]!.find((f) => !faces.includes(f));
    const [p, q] = [run.points[0]!, run.points[1]!];
    const out = wall === undefined ? undefined : outwardAt(brep.faces[wall]!.surface, p);
    const intoSkin = cross3(normal, unit3(sub3(q, p)));
    // half: a wall square to the skin gives 1, a countersink or chamfer less than 0
    return out !== undefined && dot3(out, intoSkin) > 0.5;
  });

/** An outline runs counter-clockwise about the skin's normal, a hole clockwise. */
const isOutline = (loop: readonly Run[], normal: Vec3): boolean => {
  const points = loop.flatMap((run) => run.points.slice(0, -1));
  const twice = points.reduce((sum, p, i) => sum + dot3(cross3(sub3(p, points[0]!), sub3(points[(i + 1) % points.length]!, points[0]!)), normal), 0);
  return twice > 0;
};

/** The metal of one slab: both skins' outlines with sharp bends' edges moved to the tangent lines, the smaller metal kept. */
export const plateMetal = (brep: Brep, users: readonly (readonly number[])[], slab: Slab, placed: Placed, sharp: readonly SharpEnd[], thickness: number): PlateMetal => {
  let [approximated, feet] = [0, 0];
  const spans = new Map<Joint, (readonly [number, number])[]>();
  const skin = (side: 0 | 1): Contour[] => {
    const { faces, normal } = slab.sides[side];
    const all = boundaryLoops(brep, faces);
    const kept = all.filter((loop) => isOutline(loop, normal) || !isFoot(brep, users, faces, normal, loop));
    feet += all.length - kept.length;
    let loops: Corner[][] = kept.map((loop) => {
      const read = planeCorners(loop, placed.frame);
      approximated += read.approximated;
      return read.corners;
    });
    for (const end of sharp) {
      if (end.joint.drawn.kind !== 'sharp') continue;
      const moving = end.joint.drawn.edges[endOf(end.joint, placed.slab)];
      const target = targetOf(placed, end, thickness);
      const moved = loops.map((corners) => moveEdges(corners, moving, target));
      loops = moved.map((m) => m.corners);
      const own = moved.flatMap((m) => m.spans);
      const known = spans.get(end.joint);
      spans.set(end.joint, known ? overlaps(known, own) : own);
    }
    const contours = loops.filter((corners) => corners.length >= 2).map(toContour);
    return side === placed.aSide ? contours : contours.map(reversed);
  };
  const [a, b] = [skin(placed.aSide), skin(placed.aSide === 0 ? 1 : 0)];
  return { metal: smallerMetal(a, b), approximated, feet, spans };
};

export const sharpEnds = (all: readonly Placed[], slab: number): SharpEnd[] =>
  all.flatMap(({ parent, slab: own }) =>
    parent && parent.joint.drawn.kind === 'sharp' && (own === slab || parent.slab === slab) ? [{ joint: parent.joint, axis: parent.axis }] : [],
  );

/** mm along an axis from a joint's centre. */
export const along = (joint: Joint, axis: Vec3, p: Vec3): number => dot3(sub3(p, joint.centre), axis);

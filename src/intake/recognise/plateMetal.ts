import { type Contour, type Vec2, type Vec3, apply, dot3, invert, reversed, turn } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { type Placed, endOf } from './frames.js';
import type { Joint } from './joints.js';
import { boundaryLoops } from './loops.js';
import { type Target, moveEdges } from './moveEdges.js';
import { type Corner, planeCorners, toContour } from './outline.js';
import type { Slab } from './slabs.js';
import { type SharedMetal, smallerMetal } from './smallerMetal.js';
import { tangentPoint } from './zone.js';

/** A slab's metal in its own frame. */
export interface PlateMetal {
  readonly metal: SharedMetal;
  readonly approximated: number;
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

/** The metal of one slab: both skins' outlines with sharp bends' edges moved to the tangent lines, the smaller metal kept. */
export const plateMetal = (brep: Brep, slab: Slab, placed: Placed, sharp: readonly SharpEnd[], thickness: number): PlateMetal => {
  let approximated = 0;
  const spans = new Map<Joint, (readonly [number, number])[]>();
  const skin = (side: 0 | 1): Contour[] => {
    let loops: Corner[][] = boundaryLoops(brep, slab.sides[side].faces).map((loop) => {
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
  return { metal: smallerMetal(a, b), approximated, spans };
};

export const sharpEnds = (all: readonly Placed[], slab: number): SharpEnd[] =>
  all.flatMap(({ parent, slab: own }) =>
    parent && parent.joint.drawn.kind === 'sharp' && (own === slab || parent.slab === slab) ? [{ joint: parent.joint, axis: parent.axis }] : [],
  );

/** mm along an axis from a joint's centre. */
export const along = (joint: Joint, axis: Vec3, p: Vec3): number => dot3([p[0] - joint.centre[0], p[1] - joint.centre[1], p[2] - joint.centre[2]], axis);

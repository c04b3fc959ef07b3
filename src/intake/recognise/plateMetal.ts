import { type Contour, type Vec2, type Vec3, apply, bounds, cross3, dot3, invert, reversed, signedArea, sub3, turn } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { SAME_POINT } from '../tolerances.js';
import type { FormedFound } from './formed.js';
import { type Placed, endOf } from './frames.js';
import type { Joint } from './joints.js';
import { type Run, boundaryLoops } from './loops.js';
import { type Target, moveEdges } from './moveEdges.js';
import { type Corner, planeCorners, toContour } from './outline.js';
import type { Slab } from './slabs.js';
import { type SharedMetal, smallerMetal } from './smallerMetal.js';
import { tangentPoint } from './zone.js';

/** A slab's metal in its own frame. */
export interface PlateMetal {
  readonly metal: SharedMetal;
  readonly approximated: number;
  /** What is formed into the plate or stands on it, in its frame. */
  readonly formed: readonly PlateFormed[];
  /** For each sharp joint on the slab, where its edge now lies: intervals along the joint's axis (mm from its centre). */
  readonly spans: ReadonlyMap<Joint, readonly (readonly [number, number])[]>;
}

/** The outline of what is formed, the widest of its loops, and on which side of the plate it stands. */
export interface PlateFormed extends Pick<FormedFound, 'kind' | 'height' | 'depth'> {
  readonly outline: Contour;
  readonly onA: boolean;
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

/** An outline runs counter-clockwise about the skin's normal, a hole clockwise. */
const isOutline = (loop: readonly Run[], normal: Vec3): boolean => {
  const points = loop.flatMap((run) => run.points.slice(0, -1));
  const twice = points.reduce((sum, p, i) => sum + dot3(cross3(sub3(p, points[0]!), sub3(points[(i + 1) % points.length]!, points[0]!)), normal), 0);
  return twice > 0;
};

const ccw = (c: Contour): Contour => (signedArea(c) < 0 ? reversed(c) : c);

/** Of contours one over the other (the ends of a bore) the widest. */
const widestOf = (contours: readonly Contour[]): Contour[] => {
  const bySize = [...contours].sort((a, b) => signedArea(b) - signedArea(a));
  const points = (c: Contour): Vec2[] => c.map((v): Vec2 => [v.x, v.y]);
  const inside = (c: Contour, o: Contour): boolean => {
    const [[x0, y0], [x1, y1]] = bounds([o]);
    return points(c).every(([x, y]) => x > x0 - SAME_POINT && x < x1 + SAME_POINT && y > y0 - SAME_POINT && y < y1 + SAME_POINT);
  };
  return bySize.filter((c, i) => !bySize.slice(0, i).some((o) => inside(c, o)));
};

/** The metal of one slab: both skins' outlines with sharp bends' edges moved to the tangent lines, the smaller metal kept. */
export const plateMetal = (brep: Brep, slab: Slab, placed: Placed, sharp: readonly SharpEnd[], thickness: number, found: readonly FormedFound[]): PlateMetal => {
  let approximated = 0;
  const own = found.filter((it) => it.slab === placed.slab);
  const widest: (Contour | undefined)[] = own.map(() => undefined);
  const spans = new Map<Joint, (readonly [number, number])[]>();
  const skin = (side: 0 | 1): Contour[] => {
    const { faces, normal } = slab.sides[side];
    const kept = boundaryLoops(brep, faces).filter((loop) => {
      const at = isOutline(loop, normal) ? -1 : own.findIndex(({ edges }) => loop.some((run) => edges.has(run.edge)));
      if (at < 0) return true;
      const contour = ccw(toContour(planeCorners(loop, placed.frame).corners));
      if (widest[at] === undefined || signedArea(contour) > signedArea(widest[at])) widest[at] = contour;
      return false;
    });
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
      const now = moved.flatMap((m) => m.spans);
      const known = spans.get(end.joint);
      spans.set(end.joint, known ? overlaps(known, now) : now);
    }
    const contours = loops.filter((corners) => corners.length >= 2).map(toContour);
    return side === placed.aSide ? contours : contours.map(reversed);
  };
  const [a, b] = [skin(placed.aSide), skin(placed.aSide === 0 ? 1 : 0)];
  const shared = smallerMetal(a, b);
  const through = widestOf(own.flatMap((it) => it.through.map((loop) => ccw(toContour(planeCorners(loop, placed.frame).corners)))));
  const metal = through.length === 0 ? shared : { ...shared, holes: [...shared.holes, ...through.map(reversed)] };
  const formed = own.flatMap(({ kind, height, depth, side }, i): PlateFormed[] => (widest[i] === undefined ? [] : [{ kind, height, depth, outline: widest[i], onA: side === placed.aSide }]));
  return { metal, approximated, formed, spans };
};

export const sharpEnds = (all: readonly Placed[], slab: number): SharpEnd[] =>
  all.flatMap(({ parent, slab: own }) =>
    parent && parent.joint.drawn.kind === 'sharp' && (own === slab || parent.slab === slab) ? [{ joint: parent.joint, axis: parent.axis }] : [],
  );

/** mm along an axis from a joint's centre. */
export const along = (joint: Joint, axis: Vec3, p: Vec3): number => dot3(sub3(p, joint.centre), axis);

import { type Contour, type Vec2, type Vec3, add3, dot3, scale3, sub3, vertex } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { SAME_POINT } from '../tolerances.js';
import type { Joint } from './joints.js';
import { boundaryLoops } from './loops.js';
import type { Patch } from './patches.js';
import { type Region, boxOf, intersectRegions, regionArea } from './region.js';

/** The curved metal unrolled: u (mm) along `axis` from the joint's centre, f the share of the arc from side `from`. */
export interface Unrolled {
  readonly contours: readonly Contour[];
  readonly span: readonly [number, number];
  /** The cylinder faces' shapes differed (holes not square to the curved skin): the common metal was kept. */
  readonly clipped: boolean;
}

/** mm along the middle of the arc per share of the arc, so that clipping sees millimetres both ways. */
const arcLength = (joint: Joint, thickness: number): number => joint.angle * (joint.insideRadius + thickness / 2);

/** `centre`: of the cylinder that the point lies on, where it is not quite the joint's. */
const unrollPoint = (joint: Joint, from: 0 | 1, axis: Vec3, p: Vec3, centre: Vec3): Vec2 => {
  const reach = sub3(p, centre);
  const turned = Math.atan2(dot3(reach, joint.outs[from]), dot3(reach, joint.radials[from]));
  // the arc lies from 0 to its angle: what seems far behind the start is beyond the end
  const x = turned < -(2 * Math.PI - joint.angle) / 2 ? turned + 2 * Math.PI : turned;
  const f = x / joint.angle;
  const snapped = Math.abs(f) < 1e-6 ? 0 : Math.abs(f - 1) < 1e-6 ? 1 : f;
  return [dot3(sub3(p, joint.centre), axis), snapped];
};

const unroll = (brep: Brep, joint: Joint, from: 0 | 1, axis: Vec3, { faces, origin }: Pick<Patch, 'faces' | 'origin'>, scale: number): Region =>
  boundaryLoops(brep, faces).map((loop) => {
    const points = loop.flatMap((run) => run.points.slice(0, -1));
    return points.map((p): Vec2 => {
      const [u, f] = unrollPoint(joint, from, axis, p, origin);
      return [u, f * scale];
    });
  });

/** Loops turned so that the outlines run counter-clockwise. */
const turnedOut = (region: Region): Region => (regionArea(region) < 0 ? region.map((loop) => [...loop].reverse()) : region);

const withoutRepeats = (loop: readonly Vec2[]): Vec2[] =>
  loop.filter((p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    return Math.hypot(p[0] - q[0], p[1] - q[1]) > 1e-6;
  });

/** Without points on the straight line between their neighbours. */
const withoutFlats = (loop: readonly Vec2[]): Vec2[] =>
  loop.filter((p, i) => {
    const [a, b] = [loop[(i + loop.length - 1) % loop.length]!, loop[(i + 1) % loop.length]!];
    const cross = (p[0] - a[0]) * (b[1] - p[1]) - (p[1] - a[1]) * (b[0] - p[0]);
    return Math.abs(cross) > 1e-7 * Math.hypot(b[0] - a[0], b[1] - a[1]);
  });

/** The stretches along the axis where both slabs touch the patch, widened to the middle of the gaps to other slabs. */
const stretches = (joint: Joint, axis: Vec3, others: readonly (readonly [number, number])[]): (readonly [number, number])[] => {
  if (joint.drawn.kind !== 'round' || others.length === 0) return [[-Infinity, Infinity]];
  const own = joint.drawn.contacts.map((contacts) =>
    contacts.map(({ ends }) => ends.map((p) => dot3(sub3(p, joint.centre), axis)).sort((a, b) => a - b) as [number, number]),
  );
  const both = own[0]!.flatMap(([a0, a1]) => own[1]!.map(([b0, b1]) => [Math.max(a0, b0), Math.min(a1, b1)] as const)).filter(([a, b]) => b > a);
  return both.map(([a, b]) => {
    const before = others.filter((o) => o[1] <= a + SAME_POINT).map((o) => o[1]);
    const after = others.filter((o) => o[0] >= b - SAME_POINT).map((o) => o[0]);
    return [before.length ? (Math.max(...before) + a) / 2 : -Infinity, after.length ? (Math.min(...after) + b) / 2 : Infinity] as const;
  });
};

/**
 * Unrolls a round joint as seen from slab `from`. `others` are the stretches (mm along the axis from the centre) that
 * belong to other slabs on the same cylinder; the metal between is shared out at the middle.
 */
export const unrollJoint = (
  brep: Brep,
  joint: Joint,
  from: 0 | 1,
  axis: Vec3,
  thickness: number,
  others: readonly (readonly [number, number])[],
): Unrolled => {
  if (joint.drawn.kind !== 'round') throw new Error('only a round joint has curved faces');
  const scale = arcLength(joint, thickness);
  const of = (patches: readonly Patch[]): Region => turnedOut(patches.flatMap((patch) => unroll(brep, joint, from, axis, patch, scale)));
  const [inner, outer] = [of(joint.drawn.inside), of(joint.drawn.outside)];
  const common = intersectRegions(inner, outer);
  const differs = Math.abs(regionArea(common) - regionArea(inner)) > SAME_POINT * scale || Math.abs(regionArea(common) - regionArea(outer)) > SAME_POINT * scale;
  const whole = differs ? common : inner;
  const parts = stretches(joint, axis, others).flatMap(([a, b]): Region => {
    if (a === -Infinity && b === Infinity) return whole;
    const [x0, , x1] = boxOf(whole);
    const [l, r] = [Math.max(a, x0 - 1), Math.min(b, x1 + 1)];
    return intersectRegions(whole, [[[l, -scale], [r, -scale], [r, 2 * scale], [l, 2 * scale]]]);
  });
  const clean = parts.map((loop) => withoutFlats(withoutRepeats(loop))).filter((loop) => loop.length >= 3 && Math.abs(regionArea([loop])) > 1e-6);
  const [u0, , u1] = boxOf(clean);
  const snap = (f: number): number => (Math.abs(f) < 1e-6 ? 0 : Math.abs(f - 1) < 1e-6 ? 1 : f);
  return {
    contours: clean.map((loop) => loop.map(([u, s]) => vertex(u, snap(s / scale)))),
    span: [u0, u1],
    clipped: differs,
  };
};

/** A point on a joint's tangent line in the middle plane of slab `side`, `u` mm along the axis from the centre. */
export const tangentPoint = (joint: Joint, side: 0 | 1, axis: Vec3, thickness: number, u: number): Vec3 =>
  add3(joint.centre, add3(scale3(joint.radials[side], joint.insideRadius + thickness / 2), scale3(axis, u)));

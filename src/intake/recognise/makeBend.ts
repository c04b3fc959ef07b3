import { type Contour, type Vec2, apply, invert, vertex } from '../../geometry/index.js';
import { type Bend, type Line, bendKind } from '../../sheet/index.js';
import type { Brep } from '../step/brep.js';
import { type Placed, endOf } from './frames.js';
import type { Joint } from './joints.js';
import { type PlateMetal, along, overlaps } from './plateMetal.js';
import { tangentPoint, unrollJoint } from './zone.js';

export interface MadeBend {
  readonly bend: Bend;
  /** The two skins of the curved metal differed and the common part was kept. */
  readonly clipped: boolean;
}

/** A zone of straight sides between the moved edges of a sharp bend. */
const sharpZone = (p: readonly (readonly [number, number])[], q: readonly (readonly [number, number])[]): Contour[] => {
  const [a, b] = [[...p].sort((x, y) => x[0] - y[0]), [...q].sort((x, y) => x[0] - y[0])];
  const paired = a.length === b.length ? a.map((s, i) => [s, b[i]!] as const) : overlaps(a, b).map((s) => [s, s] as const);
  return paired.map(([s, e]) => [vertex(s[0], 0), vertex(s[1], 0), vertex(e[1], 1), vertex(e[0], 1)]);
};

/** Stretches along the axis that other slabs take up on the same cylinder. */
const otherStretches = (joint: Joint, all: readonly Joint[], axis: Placed['frame']['x']): (readonly [number, number])[] => {
  if (joint.drawn.kind !== 'round') return [];
  const patches = new Set(joint.drawn.inside);
  return all.flatMap((other) => {
    const drawn = other.drawn;
    if (other === joint || drawn.kind !== 'round' || !drawn.inside.some((p) => patches.has(p))) return [];
    return ([0, 1] as const).flatMap((end) =>
      joint.slabs.includes(other.slabs[end])
        ? []
        : drawn.contacts[end].map(({ ends }) => {
            const [a, b] = ends.map((p) => along(joint, axis, p)) as [number, number];
            return [Math.min(a, b), Math.max(a, b)] as const;
          }),
    );
  });
};

/** The bend over which a placed slab hangs on its parent; undefined when no stretch of it is shared by both plates. */
export const makeBend = (
  brep: Brep,
  id: string,
  child: Placed,
  parent: Placed,
  numbers: readonly [number, number],
  metals: readonly [PlateMetal, PlateMetal],
  joints: readonly Joint[],
  thickness: number,
): MadeBend | undefined => {
  const { joint, axis } = child.parent!;
  const [near, far] = [endOf(joint, parent.slab), endOf(joint, child.slab)];
  const unrolled =
    joint.drawn.kind === 'round'
      ? unrollJoint(brep, joint, near, axis, thickness, otherStretches(joint, joints, axis))
      : { contours: sharpZone(metals[0].spans.get(joint) ?? [], metals[1].spans.get(joint) ?? []), clipped: false };
  if (unrolled.contours.length === 0) return undefined;
  const us = unrolled.contours.flat().map((v) => v.x);
  const [u0, u1] = [Math.min(...us), Math.max(...us)];
  const line = (placed: Placed, end: 0 | 1): Line => {
    const inverse = invert(placed.frame);
    const at = (u: number): Vec2 => {
      const [x, y] = apply(inverse, tangentPoint(joint, end, axis, thickness, u));
      return [x, y];
    };
    return { from: at(u0), to: at(u1) };
  };
  const bendAngle = (joint.angle * 180) / Math.PI;
  const kind = bendKind(bendAngle, joint.insideRadius, thickness);
  return {
    bend: {
      id,
      kind,
      sides: [
        { plate: numbers[0], line: line(parent, near) },
        { plate: numbers[1], line: line(child, far) },
      ],
      bendAngle: Number(bendAngle.toFixed(6)),
      direction: joint.insides[near] === parent.aSide ? 'A' : 'B',
      insideRadius: Number(joint.insideRadius.toFixed(6)),
      zone: unrolled.contours.map((c) => c.map((v) => vertex(v.x - u0, v.y))),
    },
    clipped: unrolled.clipped,
  };
};

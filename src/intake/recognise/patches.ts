import { type Vec3, cross3, dot3, length3, scale3, sub3, unit3 } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { SAME_DIRECTION, SAME_LENGTH } from '../tolerances.js';

/** Cylinder faces of one axis and radius that touch each other: half-angle faces of one bend, for instance. */
export interface Patch {
  readonly faces: readonly number[];
  readonly origin: Vec3;
  readonly axis: Vec3;
  readonly radius: number;
  readonly hollow: boolean;
  readonly area: number;
}

/** The point's shortest way from the line, as a vector. */
export const fromLine = (p: Vec3, origin: Vec3, axis: Vec3): Vec3 => {
  const reach = sub3(p, origin);
  return sub3(reach, scale3(axis, dot3(reach, axis)));
};

/** One line, within `apart` mm. */
export const sameLine = (a: { origin: Vec3; axis: Vec3 }, b: { origin: Vec3; axis: Vec3 }, apart = SAME_LENGTH): boolean =>
  length3(cross3(a.axis, b.axis)) < SAME_DIRECTION && length3(fromLine(b.origin, a.origin, a.axis)) < apart;

/** For each edge, the faces that use it. */
export const facesByEdge = (brep: Brep): number[][] => {
  const users: number[][] = brep.edges.map(() => []);
  brep.faces.forEach((face, index) => {
    for (const use of face.loops.flat()) if (!users[use.edge]!.includes(index)) users[use.edge]!.push(index);
  });
  return users;
};

export const cylinderPatches = (brep: Brep, users: readonly (readonly number[])[]): Patch[] => {
  const done = new Set<number>();
  const patches: Patch[] = [];
  brep.faces.forEach((seed, start) => {
    const surface = seed.surface;
    if (surface.kind !== 'cylinder' || done.has(start)) return;
    done.add(start);
    const faces = [start];
    for (const face of faces) {
      for (const use of brep.faces[face]!.loops.flat()) {
        for (const next of users[use.edge]!) {
          const other = brep.faces[next]!.surface;
          if (done.has(next) || other.kind !== 'cylinder' || other.hollow !== surface.hollow) continue;
          if (Math.abs(other.radius - surface.radius) > SAME_LENGTH || !sameLine(surface, other)) continue;
          done.add(next);
          faces.push(next);
        }
      }
    }
    patches.push({
      faces,
      origin: surface.origin,
      axis: unit3(surface.axis),
      radius: surface.radius,
      hollow: surface.hollow,
      area: faces.reduce((sum, f) => sum + brep.faces[f]!.area, 0),
    });
  });
  return patches;
};

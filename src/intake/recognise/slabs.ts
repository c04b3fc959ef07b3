import { type Vec3, dot3, length3, sub3 } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { SAME_DIRECTION, SAME_LENGTH } from '../tolerances.js';
import { type PlanePair, opposite } from './pairs.js';

/** A flat piece of the sheet before it is known which of its sides is A: two skins back to back. */
export interface Slab {
  readonly sides: readonly [SlabSide, SlabSide];
  /** mm2: the smaller skin. */
  readonly area: number;
}

export interface SlabSide {
  readonly normal: Vec3;
  readonly origin: Vec3;
  readonly faces: readonly number[];
}

const planeOf = (brep: Brep, face: number): { normal: Vec3; origin: Vec3 } => {
  const surface = brep.faces[face]!.surface;
  if (surface.kind !== 'plane') throw new Error(`face ${face} is not plane`);
  return surface;
};

/**
 * Connected planar skins: faces back to back, and coplanar faces that share an edge, belong to one slab. A coplanar neighbour belongs
 * to it even with nothing at its back: kernels leave faces in pieces where bodies were joined.
 */
export const findSlabs = (brep: Brep, users: readonly (readonly number[])[], pairs: readonly PlanePair[]): Slab[] => {
  const skins = [...new Set(pairs.flatMap((pair) => pair.faces))].sort((a, b) => a - b);
  const links = new Map<number, Set<number>>(skins.map((face) => [face, new Set()]));
  const plane = (face: number): boolean => brep.faces[face]!.surface.kind === 'plane';
  const join = (a: number, b: number): void => {
    links.get(a)!.add(b);
    links.get(b)!.add(a);
  };
  for (const { faces } of pairs) join(...faces);
  for (const face of skins) {
    const own = planeOf(brep, face);
    for (const use of brep.faces[face]!.loops.flat()) {
      for (const next of users[use.edge]!) {
        if (next === face || !plane(next)) continue;
        const other = planeOf(brep, next);
        const coplanar =
          length3(sub3(own.normal, other.normal)) < SAME_DIRECTION &&
          Math.abs(dot3(sub3(other.origin, own.origin), own.normal)) < SAME_LENGTH;
        if (!coplanar) continue;
        if (!links.has(next)) {
          links.set(next, new Set());
          skins.push(next);
        }
        join(face, next);
      }
    }
  }
  const done = new Set<number>();
  return skins.flatMap((start) => {
    if (done.has(start)) return [];
    const group = [start];
    done.add(start);
    for (const face of group) {
      for (const next of links.get(face)!) {
        if (done.has(next)) continue;
        done.add(next);
        group.push(next);
      }
    }
    const normal = planeOf(brep, start).normal;
    const side = (back: boolean): SlabSide => {
      const faces = group.filter((f) => opposite(planeOf(brep, f).normal, normal) === back);
      return { ...pick(planeOf(brep, faces[0]!)), faces };
    };
    const sides = [side(false), side(true)] as const;
    const areas = sides.map((s) => s.faces.reduce((sum, f) => sum + brep.faces[f]!.area, 0));
    return [{ sides, area: Math.min(...areas) }];
  });
};

const pick = ({ normal, origin }: { normal: Vec3; origin: Vec3 }): { normal: Vec3; origin: Vec3 } => ({ normal, origin });

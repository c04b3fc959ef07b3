import { type Vec3, add3, dot3, length3, sub3 } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { SAME_DIRECTION, SAME_LENGTH, VARYING_SHARE } from '../tolerances.js';
import { axesAcross, faceRegion } from './facePlane.js';
import { mirrored } from './nearContours.js';
import { type Box, type Region, boxOf, boxesOverlap, overlapArea } from './region.js';

/** Two planar faces that look away from each other, metal between, at a distance (mm); the smaller one's area (mm2). */
export interface PlanePair {
  readonly faces: readonly [number, number];
  readonly distance: number;
  readonly area: number;
  /** Their shapes seen along the normal, in the same axes. */
  readonly regions: readonly [Region, Region];
}

interface Member {
  readonly face: number;
  readonly up: boolean;
  readonly height: number;
  readonly area: number;
  readonly region: Region;
  readonly box: Box;
}

export const opposite = (a: Vec3, b: Vec3): boolean => length3(add3(a, b)) < SAME_DIRECTION;

/** All planar faces of one direction, whichever way they look, seen in common axes. */
const stacks = (brep: Brep): Member[][] => {
  const found: { normal: Vec3; axes: readonly [Vec3, Vec3]; members: Member[] }[] = [];
  brep.faces.forEach(({ surface, area }, face) => {
    if (surface.kind !== 'plane') return;
    const parallel = (s: { normal: Vec3 }): boolean =>
      length3(sub3(s.normal, surface.normal)) < SAME_DIRECTION || opposite(s.normal, surface.normal);
    let stack = found.find(parallel);
    if (!stack) found.push((stack = { normal: surface.normal, axes: axesAcross(surface.normal), members: [] }));
    const region = faceRegion(brep, face, stack.axes);
    const up = dot3(surface.normal, stack.normal) > 0;
    stack.members.push({ face, up, height: dot3(surface.origin, stack.normal), area, region, box: boxOf(region) });
  });
  return found.map((s) => s.members);
};


/** Planar faces back to back with a distance between `least` and `most` and shapes that overlap, judged by their boxes. */
export const planePairs = (brep: Brep, least: number, most: number): PlanePair[] =>
  stacks(brep).flatMap((members) =>
    members.flatMap((top) =>
      members.flatMap((low) => {
        const distance = top.height - low.height;
        if (!top.up || low.up || distance < least || distance > most || !boxesOverlap(top.box, low.box)) return [];
        const area = Math.min(top.area, low.area);
        return [{ faces: [top.face, low.face] as const, distance, area, regions: [top.region, low.region] as const }];
      }),
    ),
  );

/** mm by which a distance back to back may differ from the thickness and be healed. */
export const mayVary = (thickness: number): number => Math.max(SAME_LENGTH, VARYING_SHARE * thickness);

/** Those pairs at the thickness whose shapes truly overlap by more than a line. */
export const skinPairs = (pairs: readonly PlanePair[], thickness: number): PlanePair[] =>
  pairs.filter(
    ({ regions, distance, area }) =>
      Math.abs(distance - thickness) <= mayVary(thickness) &&
      // a fiftieth of the smaller face, at most 1 mm2: coplanar neighbours touch by rounding only
      (mirrored(...regions) || overlapArea(...regions) > Math.min(1, 0.02 * area)),
  );

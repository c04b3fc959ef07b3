import { type Vec2, type Vec3, cross3, dot3, unit3 } from '../../geometry/index.js';
import type { Brep } from '../step/brep.js';
import { boundaryLoops } from './loops.js';
import type { Region } from './region.js';

/** Two directions that make a right-handed frame with `normal`. */
export const axesAcross = (normal: Vec3): readonly [Vec3, Vec3] => {
  const [ax, ay, az] = [Math.abs(normal[0]), Math.abs(normal[1]), Math.abs(normal[2])];
  const other: Vec3 = ax <= ay && ax <= az ? [1, 0, 0] : ay <= az ? [0, 1, 0] : [0, 0, 1];
  const x = unit3(cross3(other, normal));
  return [x, cross3(normal, x)];
};

/** A planar face as polygons in the given axes, curves as their chords. */
export const faceRegion = (brep: Brep, face: number, [x, y]: readonly [Vec3, Vec3]): Region =>
  boundaryLoops(brep, [face]).map((loop) =>
    loop.flatMap((run) => run.points.slice(0, -1).map((p): Vec2 => [dot3(p, x), dot3(p, y)])),
  );

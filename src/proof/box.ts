import { type Rigid, type Vec3, apply, dot3 } from '../geometry/index.js';
import type { Manifold } from './engine.js';

/** An upright box in some frame: middle and half sizes. */
export interface Box {
  readonly middle: Vec3;
  readonly half: Vec3;
}

export const boxOf = (solid: Manifold): Box => {
  const { min, max } = solid.boundingBox();
  return {
    middle: [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2],
    half: [(max[0] - min[0]) / 2, (max[1] - min[1]) / 2, (max[2] - min[2]) / 2],
  };
};

export const cornersOf = ({ middle, half }: Box): Vec3[] =>
  [-1, 1].flatMap((i) =>
    [-1, 1].flatMap((j) =>
      [-1, 1].map((k): Vec3 => [middle[0] + i * half[0], middle[1] + j * half[1], middle[2] + k * half[2]]),
    ),
  );

const WORLD: readonly Vec3[] = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];

/**
 * A distance in mm that `box` placed by `pose` and the hull of `points` keep at least, found from the two frames of
 * axes; 0 when these do not part them. `sweep` is a shift that the points are taken through as well.
 */
export const boxGap = (box: Box, pose: Rigid, points: readonly Vec3[], sweep?: Vec3): number => {
  const middle = apply(pose, box.middle);
  const frame = [pose.x, pose.y, pose.z] as const;
  let best = 0;
  for (const axes of [WORLD, frame]) {
    let sum = 0;
    for (const n of axes) {
      let [least, most] = [Infinity, -Infinity];
      for (const p of points) {
        const d = n[0] * p[0] + n[1] * p[1] + n[2] * p[2];
        if (d < least) least = d;
        if (d > most) most = d;
      }
      if (sweep !== undefined) {
        const along = dot3(n, sweep);
        least += Math.min(0, along);
        most += Math.max(0, along);
      }
      const at = dot3(n, middle);
      const reach =
        Math.abs(dot3(n, frame[0])) * box.half[0] +
        Math.abs(dot3(n, frame[1])) * box.half[1] +
        Math.abs(dot3(n, frame[2])) * box.half[2];
      const apart = Math.max(least - at - reach, at - reach - most, 0);
      sum += apart * apart;
    }
    best = Math.max(best, Math.sqrt(sum));
  }
  return best;
};

import type { Vec2, Vec3 } from '../geometry/index.js';

/**
 * A face as it lies on the paper: rings in (x, y), and the plane of its nearness to the eye
 * `near(x, y) = a x + b y + c`. All in mm of paper.
 */
export interface Occluder {
  readonly rings: readonly (readonly Vec2[])[];
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** x0, y0, x1, y1 */
  readonly box: readonly [number, number, number, number];
  /** The nearest that any of its points comes to the eye. */
  readonly nearest: number;
}

/** The sine of the tilt to the line of sight below which a face counts as seen edge-on: 200 mm of it would be 0.002 mm wide. */
export const EDGE_ON = 1e-5;

/**
 * The occluder of a face given by its projected loops and its normal in paper axes (x right, y down, z towards the
 * eye); null when it is seen edge-on or from behind.
 */
export const occluderOf = (loops: readonly (readonly Vec3[])[], normal: Vec3): Occluder | null => {
  if (normal[2] <= EDGE_ON) return null;
  const [a, b] = [-normal[0] / normal[2], -normal[1] / normal[2]];
  const base = loops[0]![0]!;
  let [x0, y0, x1, y1, nearest] = [Infinity, Infinity, -Infinity, -Infinity, -Infinity];
  for (const [x, y, z] of loops[0]!) {
    [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
    nearest = Math.max(nearest, z);
  }
  return {
    rings: loops.map((loop) => loop.map(([x, y]): Vec2 => [x, y])),
    a,
    b,
    c: base[2] - a * base[0] - b * base[1],
    box: [x0, y0, x1, y1],
    nearest,
  };
};

export const nearness = (face: Occluder, x: number, y: number): number => face.a * x + face.b * y + face.c;

import type { Convex } from './convex.js';

/** A planar place: turn by (c, s) = (cos, sin), then shift by (x, y). */
export interface Planar {
  readonly c: number;
  readonly s: number;
  readonly x: number;
  readonly y: number;
}

/**
 * A convex polygon laid out for fast questions: corners, and each edge's outward unit normal with its distance from the
 * origin. Plain typed arrays, so that a question allocates nothing.
 */
export interface Shape {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  readonly d: Float64Array;
  /** Of the circle about the origin that holds the polygon. */
  readonly reach: number;
  readonly box: readonly [number, number, number, number];
}

export const shapeOf = (polygon: Convex): Shape => {
  const n = polygon.length;
  const [xs, ys, nx, ny, d] = [new Float64Array(n), new Float64Array(n), new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  let reach = 0;
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < n; i++) {
    const [px, py] = polygon[i]!;
    const [qx, qy] = polygon[(i + 1) % n]!;
    const size = Math.hypot(qx - px, qy - py) || 1;
    xs[i] = px;
    ys[i] = py;
    nx[i] = (qy - py) / size;
    ny[i] = (px - qx) / size;
    d[i] = nx[i]! * px + ny[i]! * py;
    reach = Math.max(reach, Math.hypot(px, py));
    [x0, y0, x1, y1] = [Math.min(x0, px), Math.min(y0, py), Math.max(x1, px), Math.max(y1, py)];
  }
  return { xs, ys, nx, ny, d, reach, box: [x0, y0, x1, y1] };
};

/**
 * `separation` of a placed shape and a shape at rest: positive, a lower bound on their distance (exact unless corner
 * faces corner); negative, minus the depth of their overlap. Stops early once it knows that the gap exceeds `enough`.
 */
export const gapOf = (moving: Shape, pose: Planar, still: Shape, enough = Infinity): number => {
  const { c, s, x, y } = pose;
  let best = -Infinity;
  for (let i = 0; i < still.d.length; i++) {
    const nx = still.nx[i]!;
    const ny = still.ny[i]!;
    const lx = c * nx + s * ny;
    const ly = c * ny - s * nx;
    let least = Infinity;
    for (let k = 0; k < moving.xs.length; k++) {
      const v = lx * moving.xs[k]! + ly * moving.ys[k]!;
      if (v < least) least = v;
    }
    const gap = least + nx * x + ny * y - still.d[i]!;
    if (gap > best) {
      best = gap;
      if (best > enough) return best;
    }
  }
  for (let k = 0; k < moving.d.length; k++) {
    const mx = moving.nx[k]!;
    const my = moving.ny[k]!;
    const nx = c * mx - s * my;
    const ny = s * mx + c * my;
    let least = Infinity;
    for (let i = 0; i < still.xs.length; i++) {
      const v = nx * still.xs[i]! + ny * still.ys[i]!;
      if (v < least) least = v;
    }
    const gap = least - (moving.d[k]! + nx * x + ny * y);
    if (gap > best) {
      best = gap;
      if (best > enough) return best;
    }
  }
  return best;
};

import type { Convex, Planar, Vec2 } from '../geometry/index.js';

/** A polygon where a planar place puts it. */
export const placed = (polygon: Convex, { c, s, x, y }: Planar): Convex =>
  polygon.map(([b, h]): Vec2 => [x + c * b - s * h, y + s * b + c * h]);

import { type Vec2, type Vec3, add3, cross3, scale3, unit3 } from '../geometry/index.js';
import { type Item, area } from './picture.js';
import { type Projection, project } from './view.js';

/** A broad arrow lying in the plane square to `normal`, its point at `tip`, `length` mm of the scene: corners in space. */
export const arrowCorners = (tip: Vec3, direction: Vec3, normal: Vec3, length: number): Vec3[] => {
  const d = unit3(direction);
  const side = unit3(cross3(normal, d));
  const at = (back: number, out: number): Vec3 => add3(tip, add3(scale3(d, -back * length), scale3(side, out * length)));
  return [at(0, 0), at(0.42, 0.3), at(0.42, 0.11), at(1, 0.11), at(1, -0.11), at(0.42, -0.11), at(0.42, -0.3)];
};

/** The arrow on the paper, in the accent: what the person does next. */
export const arrow = (corners: readonly Vec3[], to: Projection): Item =>
  area('accent', corners.map((p): Vec2 => {
    const [x, y] = project(to, p);
    return [x, y];
  }));

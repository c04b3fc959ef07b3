import { type Rigid, type Vec2, left2, sub2, unit2 } from '../geometry/index.js';
import type { Line } from './part.js';

/** The frame of a bend at one of its tangent lines, in that plate's frame: origin line.from, x = u, y = v, z = w. */
export const bendFrame = (line: Line): Rigid => {
  const u: Vec2 = unit2(sub2(line.to, line.from));
  const v = left2(u);
  return { x: [u[0], u[1], 0], y: [v[0], v[1], 0], z: [0, 0, 1], o: [line.from[0], line.from[1], 0] };
};

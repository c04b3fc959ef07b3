import { type Vec2, cross2, dot2, sub2, unit2 } from '../geometry/index.js';
import type { Line } from './part.js';

/** Place of a point in the frame of a line: along it and to its left, mm. */
export const inLine = (line: Line, p: Vec2): Vec2 => {
  const u = unit2(sub2(line.to, line.from));
  const d = sub2(p, line.from);
  return [dot2(d, u), cross2(u, d)];
};

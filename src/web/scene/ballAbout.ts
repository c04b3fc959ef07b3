import type { Vec3 } from '../../geometry/index.js';
import type { Ball } from './View3d.js';

/** A ball about all the points given (three numbers each): the box's middle, and the furthest point from it. */
export const ballAbout = (...lists: readonly (readonly number[])[]): Ball => {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const list of lists) {
    list.forEach((v, i) => {
      const k = i % 3;
      if (v < low[k]!) low[k] = v;
      if (v > high[k]!) high[k] = v;
    });
  }
  if (!Number.isFinite(low[0]!)) return { centre: [0, 0, 0], radius: 1 };
  const centre = low.map((v, k) => (v + high[k]!) / 2) as unknown as Vec3;
  let radius = 1;
  for (const list of lists) {
    for (let i = 0; i < list.length; i += 3) {
      radius = Math.max(radius, Math.hypot(list[i]! - centre[0], list[i + 1]! - centre[1], list[i + 2]! - centre[2]));
    }
  }
  return { centre, radius: radius * 1.04 };
};

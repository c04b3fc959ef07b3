import type { Vec2, Vec3 } from '../geometry/index.js';
import { type Occluder, nearness } from './occluder.js';

/**
 * Parallel lines over a face, cut to its rim: on the paper `spacing` mm apart along `direction` (x, y on the paper), at
 * places fixed by the paper's origin so that neighbouring facets continue each other. With nearness, to be cut again by what hides them.
 */
export const hatchLines = (face: Occluder, direction: Vec2, spacing: number): [Vec3, Vec3][] => {
  const length = Math.hypot(direction[0], direction[1]);
  const d: Vec2 = [direction[0] / length, direction[1] / length];
  // `across` numbers the lines, `along` measures on them
  const across = (p: Vec2): number => (d[0] * p[1] - d[1] * p[0]) / spacing;
  const along = (p: Vec2): number => d[0] * p[0] + d[1] * p[1];
  let [least, most] = [Infinity, -Infinity];
  for (const p of face.rings[0]!) [least, most] = [Math.min(least, across(p)), Math.max(most, across(p))];
  const lines: [Vec3, Vec3][] = [];
  for (let k = Math.floor(least) + 1; k < most; k++) {
    const cuts: number[] = [];
    for (const ring of face.rings) {
      ring.forEach((p, i) => {
        const q = ring[(i + 1) % ring.length]!;
        const [np, nq] = [across(p) - k, across(q) - k];
        if (np > 0 === nq > 0) return;
        const s = np / (np - nq);
        cuts.push(along(p) + (along(q) - along(p)) * s);
      });
    }
    cuts.sort((s, t) => s - t);
    const at = (s: number): Vec3 => {
      const [x, y] = [d[0] * s - d[1] * k * spacing, d[1] * s + d[0] * k * spacing];
      return [x, y, nearness(face, x, y)];
    };
    for (let i = 0; i + 1 < cuts.length; i += 2) lines.push([at(cuts[i]!), at(cuts[i + 1]!)]);
  }
  return lines;
};

import { type Contour, type Vec2, cross2, dot2, length2, scale2, sub2, unit2, vertex } from '../geometry/index.js';

/** The contour with a round of `radius` mm in place of corner `at`, between two straight edges that are long enough for it. */
export const fillet = (contour: Contour, at: number, radius: number): Contour => {
  const count = contour.length;
  const [before, corner, after] = [contour[(at + count - 1) % count]!, contour[at]!, contour[(at + 1) % count]!];
  const p: Vec2 = [corner.x, corner.y];
  const [into, out] = [sub2(p, [before.x, before.y]), sub2([after.x, after.y], p)];
  const turned = Math.atan2(cross2(into, out), dot2(into, out));
  const cut = radius * Math.abs(Math.tan(turned / 2));
  if (before.bulge !== 0 || corner.bulge !== 0 || cut > Math.min(length2(into), length2(out))) {
    throw new Error(`corner ${at} cannot take a round of ${radius} mm`);
  }
  const [a, b] = [sub2(p, scale2(unit2(into), cut)), [p[0] + unit2(out)[0] * cut, p[1] + unit2(out)[1] * cut] as const];
  return contour.flatMap((v, i) => (i === at ? [vertex(a[0], a[1], Math.tan(turned / 4)), vertex(b[0], b[1])] : [v]));
};

import type { Vec2 } from '../../src/geometry/index.js';

/** Plain geometry for the tests' slow twins. Nothing here calls the code that it checks. */

export type Random = () => number;

export const between = (random: Random, low: number, high: number): number => low + (high - low) * random();

/** Corners on an ellipse in rising angle: convex, counter-clockwise. Neighbouring angles are at least a few degrees apart. */
export const randomConvex = (random: Random, size: number, at: Vec2 = [0, 0]): Vec2[] => {
  const count = 3 + Math.floor(random() * 6);
  const [rx, ry, spin] = [between(random, 0.3, 1) * size, between(random, 0.3, 1) * size, between(random, 0, 7)];
  return Array.from({ length: count }, (_, i): Vec2 => {
    const a = spin + ((i + between(random, 0, 0.8)) * 2 * Math.PI) / count;
    return [at[0] + rx * Math.cos(a), at[1] + ry * Math.sin(a)];
  });
};

/** Is the point in the polygon (crossing count; edges either way)? */
export const inside = ([x, y]: Vec2, polygon: readonly Vec2[]): boolean => {
  let odd = false;
  polygon.forEach(([ax, ay], i) => {
    const [bx, by] = polygon[(i + 1) % polygon.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) odd = !odd;
  });
  return odd;
};

export const toEdge = ([x, y]: Vec2, [ax, ay]: Vec2, [bx, by]: Vec2): number => {
  const [ex, ey] = [bx - ax, by - ay];
  const size = ex * ex + ey * ey;
  const share = size === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * ex + (y - ay) * ey) / size));
  return Math.hypot(x - ax - ex * share, y - ay - ey * share);
};

/** mm from a point to a polygon's edges. */
export const toOutline = (p: Vec2, polygon: readonly Vec2[]): number =>
  Math.min(...polygon.map((a, i) => toEdge(p, a, polygon[(i + 1) % polygon.length]!)));

/** mm from a point to a polygon, 0 inside it. */
export const toPolygon = (p: Vec2, polygon: readonly Vec2[]): number => (inside(p, polygon) ? 0 : toOutline(p, polygon));

/** Points along the outline no further than `step` apart, corners among them. */
export const alongOutline = (polygon: readonly Vec2[], step: number): Vec2[] => polygon.flatMap(([ax, ay], i) => {
  const [bx, by] = polygon[(i + 1) % polygon.length]!;
  const pieces = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / step));
  return Array.from({ length: pieces }, (_, k): Vec2 => [ax + ((bx - ax) * k) / pieces, ay + ((by - ay) * k) / pieces]);
});

/** The signed area, counter-clockwise positive (shoelace). */
export const shoelace = (polygon: readonly Vec2[]): number =>
  polygon.reduce((sum, [ax, ay], i) => {
    const [bx, by] = polygon[(i + 1) % polygon.length]!;
    return sum + (ax * by - ay * bx) / 2;
  }, 0);

const crosses = (a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean => {
  const side = (p: Vec2, q: Vec2, r: Vec2): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
};

/** mm between two polygons, 0 where they overlap: every corner against every edge. */
export const apart = (one: readonly Vec2[], two: readonly Vec2[]): number => {
  const edges = (p: readonly Vec2[]): [Vec2, Vec2][] => p.map((a, i) => [a, p[(i + 1) % p.length]!]);
  if (one.some((p) => inside(p, two)) || two.some((p) => inside(p, one))) return 0;
  if (edges(one).some(([a, b]) => edges(two).some(([c, d]) => crosses(a, b, c, d)))) return 0;
  return Math.min(...one.map((p) => toOutline(p, two)), ...two.map((p) => toOutline(p, one)));
};

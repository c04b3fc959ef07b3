import { type Convex, type Vec2, hull } from '../geometry/index.js';

/** How far one thing must be shifted to be clear of another, and which way. mm; negative: they are so far apart already. */
export interface Shift {
  readonly by: number;
  readonly towards: Vec2;
}

/** Shares of an edge nearer than this to each other are one. */
const SHARE = 1e-9;

/** Where the segment p + s (q - p), 0 <= s <= 1, runs inside a convex polygon; null when it does not. */
const inside = (p: Vec2, q: Vec2, polygon: Convex): readonly [number, number] | null => {
  let [from, to] = [0, 1];
  for (let i = 0; i < polygon.length; i++) {
    const a = polygon[i]!;
    const b = polygon[(i + 1) % polygon.length]!;
    // outward normal of a counter-clockwise edge
    const [nx, ny] = [b[1] - a[1], a[0] - b[0]];
    const at = nx * (p[0] - a[0]) + ny * (p[1] - a[1]);
    const rise = nx * (q[0] - p[0]) + ny * (q[1] - p[1]);
    const size = Math.hypot(nx, ny);
    if (Math.abs(rise) <= SHARE * size) {
      // along the very edge counts as outside: two polygons that only touch leave a way between them
      if (at >= -SHARE * size) return null;
    } else if (rise > 0) to = Math.min(to, -at / rise);
    else from = Math.max(from, -at / rise);
    if (from >= to - SHARE) return null;
  }
  return [from, to];
};

/** The point of the segment from p to q nearest to the origin. */
const nearest = (p: Vec2, q: Vec2): Vec2 => {
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const s = Math.min(1, Math.max(0, -(p[0] * dx + p[1] * dy) / Math.max(dx * dx + dy * dy, Number.MIN_VALUE)));
  return [p[0] + dx * s, p[1] + dy * s];
};

const holdsOrigin = (polygon: Convex): boolean =>
  polygon.every((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!;
    return a[0] * b[1] - a[1] * b[0] > 0;
  });

/**
 * The least shift of `moving` (the union of its pieces) that takes it clear of `still`: the way from the origin to the edge of
 * the shifts that overlap, which are the sums of each still piece with each moving one turned about the origin. Exact.
 */
export const leastShift = (moving: readonly Convex[], still: readonly Convex[]): Shift => {
  const sums = moving.flatMap((m) => still.map((s) => hull(s.flatMap((p) => m.map((q): Vec2 => [p[0] - q[0], p[1] - q[1]])))));
  const overlaps = sums.some(holdsOrigin);
  let best: Vec2 = [Infinity, 0];
  const take = (p: Vec2, q: Vec2): void => {
    const point = nearest(p, q);
    if (Math.hypot(...point) < Math.hypot(...best)) best = point;
  };
  sums.forEach((polygon, i) => {
    polygon.forEach((p, k) => {
      const q = polygon[(k + 1) % polygon.length]!;
      if (Math.hypot(...nearest(p, q)) >= Math.hypot(...best)) return;
      if (!overlaps) return take(p, q);
      // only what no other sum covers is on the edge of them all
      const covered = sums.flatMap((other, j) => (j === i ? [] : [inside(p, q, other) ?? []].filter((c) => c.length > 0))) as (readonly [number, number])[];
      let at = 0;
      const at2 = (s: number): Vec2 => [p[0] + (q[0] - p[0]) * s, p[1] + (q[1] - p[1]) * s];
      for (const [from, to] of [...covered, [1, 1] as const].sort((a, b) => a[0] - b[0])) {
        if (from > at + SHARE) take(at2(at), at2(from));
        at = Math.max(at, to);
      }
      return undefined;
    });
  });
  const size = Math.hypot(...best);
  return { by: overlaps ? size : -size, towards: size > 0 ? [best[0] / size, best[1] / size] : [0, 1] };
};

import { type Vec2, cross2, dot2, length2, left2, scale2, sub2 } from './vec.js';

/** A convex polygon, corners counter-clockwise. */
export type Convex = readonly Vec2[];

/** The convex hull, counter-clockwise, collinear points dropped (Andrew's monotone chain). */
export const hull = (points: readonly Vec2[]): Convex => {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const half = (run: readonly Vec2[]): Vec2[] => {
    const chain: Vec2[] = [];
    for (const p of run) {
      while (chain.length >= 2) {
        const a = chain[chain.length - 2]!;
        const b = chain[chain.length - 1]!;
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return [...half(sorted), ...half(sorted.reverse())];
};

/** The hull of a convex polygon carried along a straight way: exact for a translation. */
export const carried = (polygon: Convex, by: Vec2): Convex =>
  hull([...polygon, ...polygon.map((p): Vec2 => [p[0] + by[0], p[1] + by[1]])]);

const leastAlong = (points: Convex, nx: number, ny: number): number => {
  let least = Infinity;
  for (const p of points) {
    const d = p[0] * nx + p[1] * ny;
    if (d < least) least = d;
  }
  return least;
};

const overEdges = (a: Convex, b: Convex): number => {
  let best = -Infinity;
  for (let i = 0; i < a.length; i++) {
    const p = a[i]!;
    const q = a[(i + 1) % a.length]!;
    const ex = q[0] - p[0];
    const ey = q[1] - p[1];
    const size = Math.hypot(ex, ey);
    if (size === 0) continue;
    const nx = ey / size;
    const ny = -ex / size;
    const gap = leastAlong(b, nx, ny) - (p[0] * nx + p[1] * ny);
    if (gap > best) best = gap;
  }
  return best;
};

/**
 * How far two convex polygons are apart along the best edge normal, mm. Positive: a lower bound on their distance
 * (exact unless corner faces corner). Negative: minus the depth of their overlap, exact.
 */
export const separation = (a: Convex, b: Convex): number => Math.max(overEdges(a, b), overEdges(b, a));

const pointToSegment = (p: Vec2, a: Vec2, b: Vec2): number => {
  const d = sub2(b, a);
  const s = Math.min(1, Math.max(0, dot2(sub2(p, a), d) / Math.max(dot2(d, d), Number.MIN_VALUE)));
  return length2(sub2(p, [a[0] + d[0] * s, a[1] + d[1] * s]));
};

/** The distance of two convex polygons, mm, exact; where they overlap, minus the depth. */
export const distance = (a: Convex, b: Convex): number => {
  const apart = separation(a, b);
  if (apart <= 0) return apart;
  let least = Infinity;
  const between = (from: Convex, to: Convex): void => {
    for (const p of from) {
      for (let i = 0; i < to.length; i++) least = Math.min(least, pointToSegment(p, to[i]!, to[(i + 1) % to.length]!));
    }
  };
  between(a, b);
  between(b, a);
  return least;
};

/**
 * The half-planes n . p <= d that hold every point within `by` of the polygon; sharp corners are bevelled so that
 * the outline leaves the true offset by no more than 5 % of `by`.
 */
export const offsetPlanes = (polygon: Convex, by: number): readonly { readonly n: Vec2; readonly d: number }[] => {
  const planes: { n: Vec2; d: number }[] = [];
  const normals = polygon.map((p, i) => {
    const e = sub2(polygon[(i + 1) % polygon.length]!, p);
    return scale2(left2(e), -1 / length2(e));
  });
  // corners turning by more than this (35.5 deg) get extra planes: 1 / cos(step / 2) = 1.05
  const step = 2 * Math.acos(1 / 1.05);
  polygon.forEach((p, i) => {
    const before = normals[(i + polygon.length - 1) % polygon.length]!;
    const after = normals[i]!;
    const turned = Math.atan2(cross2(before, after), dot2(before, after));
    const extra = Math.ceil(turned / step) - 1;
    for (let k = 1; k <= extra; k++) {
      const a = Math.atan2(before[1], before[0]) + (turned * k) / (extra + 1);
      const n: Vec2 = [Math.cos(a), Math.sin(a)];
      planes.push({ n, d: dot2(n, p) + by });
    }
    planes.push({ n: after, d: dot2(after, p) + by });
  });
  return planes;
};

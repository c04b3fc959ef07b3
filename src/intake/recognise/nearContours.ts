import type { Vec2 } from '../../geometry/index.js';
import { SAME_POINT } from '../tolerances.js';
import { type Box, type Region, boxOf } from './region.js';

// Quick answers for two loops that are nearly one, as the two skins of a cut-out are, or plainly apart: a clipping of their polygons takes a
// hundred times longer.

const toSegment = ([x, y]: Vec2, [ax, ay]: Vec2, [bx, by]: Vec2): number => {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
};

/** Whether each corner of a loop lies on another one, within the modelling tolerance; both run the same way round. */
export const hugs = (inner: readonly Vec2[], outer: readonly Vec2[]): boolean => {
  let at = 0;
  return inner.every((p) => {
    for (let k = 0; k < outer.length; k++) {
      const i = (at + k) % outer.length;
      if (toSegment(p, outer[i]!, outer[(i + 1) % outer.length]!) >= SAME_POINT) continue;
      at = i;
      return true;
    }
    return false;
  });
};

const near = (p: Vec2, q: Vec2): boolean => Math.abs(p[0] - q[0]) < SAME_POINT && Math.abs(p[1] - q[1]) < SAME_POINT;

/** Whether two regions have the same loops, corner by corner, run the other way round: the two skins of a plate, seen along one normal. */
export const mirrored = (a: Region, b: Region): boolean => {
  if (a.length !== b.length) return false;
  const left = [...b];
  return a.every((loop) => {
    const at = left.findIndex((other) => {
      const shift = loop.length === other.length ? other.findIndex((p) => near(p, loop[0]!)) : -1;
      return shift >= 0 && loop.every((p, i) => near(p, other[(shift - i + other.length) % other.length]!));
    });
    if (at >= 0) left.splice(at, 1);
    return at >= 0;
  });
};

/** Where a level line runs inside a loop, from left to right. */
const inside = (loop: readonly Vec2[], y: number): number[] => {
  const xs: number[] = [];
  loop.forEach(([ax, ay], i) => {
    const [bx, by] = loop[(i + 1) % loop.length]!;
    if (ay > y !== by > y) xs.push(ax + ((y - ay) / (by - ay)) * (bx - ax));
  });
  return xs.sort((a, b) => a - b);
};

/** Shares of the height at which two loops are compared, and mm that they must have in common there. */
const LEVELS = [0.5, 0.27, 0.73];
const COMMON = 0.05;

/** Whether two loops plainly have area in common, told by a few level lines; false where these do not tell. */
export const plainlyOverlap = (a: readonly Vec2[], b: readonly Vec2[]): boolean => {
  const ys = a.map((p) => p[1]);
  const [low, high] = [ys.reduce((m, y) => Math.min(m, y), Infinity), ys.reduce((m, y) => Math.max(m, y), -Infinity)];
  // a stretch common to two lines close by is an area, however narrow
  return LEVELS.some((share) => [0, COMMON].every((by) => {
    const y = low + (high - low) * share + by;
    const [p, q] = [inside(a, y), inside(b, y)];
    for (let i = 0; i + 1 < p.length; i += 2) {
      for (let k = 0; k + 1 < q.length; k += 2) if (Math.min(p[i + 1]!, q[k + 1]!) - Math.max(p[i]!, q[k]!) > COMMON) return true;
    }
    return false;
  }));
};

const side = ([ax, ay]: Vec2, [bx, by]: Vec2, [px, py]: Vec2): number => (bx - ax) * (py - ay) - (by - ay) * (px - ax);

/** Whether two loops plainly have nothing in common: no edges that meet, and neither inside the other. */
export const plainlyApart = (a: readonly Vec2[], b: readonly Vec2[]): boolean => {
  const about = (loop: readonly Vec2[], [x0, y0, x1, y1]: Box): (readonly [Vec2, Vec2])[] =>
    loop.flatMap((p, i) => {
      const q = loop[(i + 1) % loop.length]!;
      const off = Math.max(p[0], q[0]) < x0 || Math.min(p[0], q[0]) > x1 || Math.max(p[1], q[1]) < y0 || Math.min(p[1], q[1]) > y1;
      return off ? [] : [[p, q] as const];
    });
  const [own, others] = [about(a, boxOf([b])), about(b, boxOf([a]))];
  const meet = own.some(([p, q]) => {
    const [x0, x1, y0, y1] = [Math.min(p[0], q[0]), Math.max(p[0], q[0]), Math.min(p[1], q[1]), Math.max(p[1], q[1])];
    return others.some(([r, s]) => {
      if (Math.max(r[0], s[0]) < x0 || Math.min(r[0], s[0]) > x1 || Math.max(r[1], s[1]) < y0 || Math.min(r[1], s[1]) > y1) return false;
      return side(p, q, r) * side(p, q, s) <= 0 && side(r, s, p) * side(r, s, q) <= 0;
    });
  });
  const holds = (loop: readonly Vec2[], [x, y]: Vec2): boolean => inside(loop, y).filter((at) => at < x).length % 2 === 1;
  return !meet && !holds(a, b[0]!) && !holds(b, a[0]!);
};

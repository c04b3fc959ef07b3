import type { Vec2, Vec3 } from '../geometry/index.js';
import { type Occluder, nearness } from './occluder.js';

/**
 * mm of paper. A face hides a line only when it is nearer to the eye by more than this: lines lie on their own faces to
 * within rounding (1e-12), and the thinnest sheet at the smallest scale is still 1e-2 thick.
 */
export const IN_FRONT = 1e-6;
/** mm of paper: a point this close to a face's rim counts as on the face, so that nothing shines through a joint of two faces. */
const ON_RIM = 1e-6;
/** Spans shorter than this share of a line are rounding. */
const NO_SPAN = 1e-9;

const distanceToSegment = (x: number, y: number, p: Vec2, q: Vec2): number => {
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const long = dx * dx + dy * dy;
  const s = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - p[0]) * dx + (y - p[1]) * dy) / long));
  return Math.hypot(x - p[0] - s * dx, y - p[1] - s * dy);
};

/** Is the point on the area of the rings (even-odd), its rim included? */
export const covers = (rings: readonly (readonly Vec2[])[], x: number, y: number): boolean => {
  let inside = false;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [p, q] = [ring[j]!, ring[i]!];
      if (distanceToSegment(x, y, p, q) <= ON_RIM) return true;
      if (p[1] > y !== q[1] > y && x < p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1])) inside = !inside;
    }
  }
  return inside;
};

/** The shares of the line p-q (0 to 1) that the face hides. */
const hiddenBy = (face: Occluder, p: Vec3, q: Vec3): [number, number][] => {
  const ahead0 = nearness(face, p[0], p[1]) - p[2] - IN_FRONT;
  const ahead1 = nearness(face, q[0], q[1]) - q[2] - IN_FRONT;
  if (ahead0 <= 0 && ahead1 <= 0) return [];
  const turn = ahead0 / (ahead0 - ahead1);
  const low = ahead0 > 0 ? 0 : turn;
  const high = ahead1 > 0 ? 1 : turn;
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const length = Math.hypot(dx, dy);
  const cuts = [low, high];
  for (const ring of face.rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [r, t] = [ring[j]!, ring[i]!];
      const er = (dx * (r[1] - p[1]) - dy * (r[0] - p[0])) / length;
      const et = (dx * (t[1] - p[1]) - dy * (t[0] - p[0])) / length;
      if (Math.abs(er) <= ON_RIM) cuts.push(((r[0] - p[0]) * dx + (r[1] - p[1]) * dy) / (length * length));
      if (er > 0 !== et > 0) {
        const s = er / (er - et);
        const [x, y] = [r[0] + (t[0] - r[0]) * s - p[0], r[1] + (t[1] - r[1]) * s - p[1]];
        cuts.push((x * dx + y * dy) / (length * length));
      }
    }
  }
  const within = cuts.filter((s) => s >= low && s <= high).sort((s, t) => s - t);
  const hidden: [number, number][] = [];
  for (let i = 0; i + 1 < within.length; i++) {
    const [s, t] = [within[i]!, within[i + 1]!];
    if (t - s <= NO_SPAN) continue;
    const middle = (s + t) / 2;
    if (covers(face.rings, p[0] + dx * middle, p[1] + dy * middle)) hidden.push([s, t]);
  }
  return hidden;
};

/**
 * The shares (0 to 1) of the line p-q, given on the paper with its nearness, that no face hides. Exact: each face hides
 * where it covers the line and its plane is nearer to the eye. A line on a face, its own edges included, is not hidden by it.
 */
export const visibleSpans = (p: Vec3, q: Vec3, faces: readonly Occluder[]): [number, number][] => {
  const [x0, x1] = p[0] < q[0] ? [p[0], q[0]] : [q[0], p[0]];
  const [y0, y1] = p[1] < q[1] ? [p[1], q[1]] : [q[1], p[1]];
  if (x1 - x0 < ON_RIM && y1 - y0 < ON_RIM) return [];
  const furthest = Math.min(p[2], q[2]);
  const hidden: [number, number][] = [];
  for (const face of faces) {
    const { box } = face;
    if (box[0] > x1 || box[2] < x0 || box[1] > y1 || box[3] < y0 || face.nearest <= furthest) continue;
    hidden.push(...hiddenBy(face, p, q));
  }
  hidden.sort((s, t) => s[0] - t[0]);
  const spans: [number, number][] = [];
  let at = 0;
  for (const [s, t] of hidden) {
    if (s > at + NO_SPAN) spans.push([at, s]);
    at = Math.max(at, t);
  }
  if (at < 1 - NO_SPAN) spans.push([at, 1]);
  return spans;
};

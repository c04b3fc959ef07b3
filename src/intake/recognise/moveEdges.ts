import { type Vec2, add2, arcOf, cross2, dot2, length2, scale2, sub2 } from '../../geometry/index.js';
import { SAME_POINT } from '../tolerances.js';
import { type Corner, cornerPoint, dropPoints } from './outline.js';

/** A line that edges are moved to: through `at`, with `out` pointing out of the metal across it and `along` on it. */
export interface Target {
  readonly at: Vec2;
  readonly out: Vec2;
  readonly along: Vec2;
}

export interface Moved {
  readonly corners: Corner[];
  /** Where the moved edges now lie, as intervals along the line. */
  readonly spans: readonly (readonly [number, number])[];
}

interface Landing {
  /** Corners of the ring to drop, counted from the moved edge outwards. */
  readonly skip: number;
  readonly point: Vec2;
  /** The bulge of the edge that now ends (or begins) at the point, when it was an arc. */
  readonly bulge: number;
  /** A corner to keep before the point: the metal goes on beside the moved edge. */
  readonly step: boolean;
}

/**
 * Where the contour, followed away from a moved edge's end, crosses the target line. Corner k of `ring` (0: the
 * edge's own end) is joined to corner k + 1 by bulges[k] (turning as followed).
 */
const land = (ring: readonly Vec2[], bulges: readonly number[], target: Target): Landing => {
  const depth = (p: Vec2): number => dot2(sub2(p, target.at), target.out);
  const start = ring[0]!;
  const straight = add2(start, scale2(target.out, -depth(start)));
  const stepHere: Landing = { skip: 0, point: straight, bulge: 0, step: true };
  if (Math.abs(depth(start)) < SAME_POINT) return { skip: 0, point: straight, bulge: bulges[0]!, step: false };
  if (depth(start) < 0) {
    // the line lies further out: the neighbour is lengthened if it runs outwards, else a step is left
    const run = sub2(start, ring[1]!);
    const rise = dot2(run, target.out);
    if (bulges[0] !== 0 || rise < 0.2 * length2(run)) return stepHere;
    return { skip: 0, point: add2(start, scale2(run, -depth(start) / rise)), bulge: 0, step: false };
  }
  for (let k = 0; k + 1 < ring.length; k++) {
    const [p, q] = [ring[k]!, ring[k + 1]!];
    // the metal goes on beside the moved edge, as far out or further
    if (depth(q) > depth(p) - SAME_POINT) return stepHere;
    if (depth(q) > SAME_POINT) continue;
    if (Math.abs(depth(q)) <= SAME_POINT) return { skip: k + 1, point: add2(q, scale2(target.out, -depth(q))), bulge: bulges[k + 1] ?? 0, step: false };
    const bulge = bulges[k]!;
    if (bulge === 0) {
      const s = depth(p) / (depth(p) - depth(q));
      return { skip: k, point: add2(p, scale2(sub2(q, p), s)), bulge: 0, step: false };
    }
    const { centre, radius } = arcOf(p, q, bulge);
    const foot = add2(centre, scale2(target.out, -depth(centre)));
    const half = Math.sqrt(Math.max(0, radius * radius - depth(centre) ** 2));
    const candidates = [half, -half].map((h) => add2(foot, scale2(target.along, h)));
    const turned = (c: Vec2): number => {
      const [a, b] = [sub2(p, centre), sub2(c, centre)];
      const angle = Math.atan2(cross2(a, b), dot2(a, b)) * Math.sign(bulge);
      return angle < 0 ? angle + 2 * Math.PI : angle;
    };
    const full = 4 * Math.atan(Math.abs(bulge));
    const hit = candidates.filter((c) => turned(c) <= full + 1e-9).sort((a, b) => turned(a) - turned(b))[0];
    if (!hit) return stepHere;
    return { skip: k, point: hit, bulge: Math.tan((full - turned(hit)) / 4) * Math.sign(bulge), step: false };
  }
  return stepHere;
};

/** The contour with the edges of `moving` laid on the target line, their neighbours shortened or lengthened to meet it. */
export const moveEdges = (corners: readonly Corner[], moving: ReadonlySet<number>, target: Target): Moved => {
  const n = corners.length;
  const at = (i: number): Corner => corners[((i % n) + n) % n]!;
  const isMoving = (i: number): boolean => moving.has(at(i).edge);
  const starts = corners.flatMap((_, i) => (isMoving(i) && !isMoving(i - 1) ? [i] : []));
  const wrap = (i: number): number => ((i % n) + n) % n;
  if (starts.length === 0) return { corners: [...corners], spans: [] };
  const across = (p: Vec2): number => dot2(sub2(p, target.at), target.along);
  const dropped = new Set<number>();
  const inserted = new Map<number, Corner[]>();
  const rebulged = new Map<number, number>();
  const spans: [number, number][] = [];
  for (const start of starts) {
    let end = start;
    while (isMoving(end)) end++;
    const reach = Math.min(12, n - (end - start) - 1);
    const back = Array.from({ length: reach + 1 }, (_, k) => cornerPoint(at(start - k)));
    const ahead = Array.from({ length: reach + 1 }, (_, k) => cornerPoint(at(end + k)));
    const before = land(back, back.map((_, k) => -at(start - k - 1).bulge), target);
    const after = land(ahead, ahead.map((_, k) => at(end + k).bulge), target);
    for (let i = start - before.skip; i < end + after.skip; i++) dropped.add(wrap(i));
    const edge = at(start).edge;
    const middle: Corner[] = [];
    if (before.step) middle.push({ ...at(start), bulge: 0 });
    else rebulged.set(wrap(start - before.skip - 1), -before.bulge);
    middle.push({ x: before.point[0], y: before.point[1], bulge: 0, edge });
    // the corner from which the next edge leaves: the landing point, then on with the rest of that edge
    middle.push({ x: after.point[0], y: after.point[1], bulge: after.step ? 0 : after.bulge, edge: at(end + after.skip).edge });
    if (after.step) middle.push({ ...at(end) });
    dropped.add(wrap(end + after.skip));
    inserted.set(start, middle);
    spans.push([across(before.point), across(after.point)].sort((a, b) => a - b) as [number, number]);
  }
  const result: Corner[] = [];
  corners.forEach((c, i) => {
    if (inserted.has(i)) result.push(...inserted.get(i)!);
    else if (!dropped.has(i)) result.push(rebulged.has(i) ? { ...c, bulge: rebulged.get(i)! } : c);
  });
  return { corners: dropPoints(result), spans };
};

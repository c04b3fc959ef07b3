import { type Contour, type Vec2, length2, sub2, vertex } from '../../geometry/index.js';
import type { Curve } from './dxfCurves.js';

/** Ends nearer than this (mm) are one point: rounding of what wrote the file, not a gap. */
const SAME_POINT = 1e-3;

export interface Chains {
  readonly loops: readonly Contour[];
  /** Ends that were joined over a gap: how many, and the widest (mm). */
  readonly healed: { readonly count: number; readonly widest: number };
  /** Edges that lead nowhere: lines that belong to no loop. */
  readonly loose: readonly Curve[];
  /** Edges drawn twice, kept once. */
  readonly doubled: number;
  /** A point where more than two edges of loops meet, so that the way round is not decided. */
  readonly branch?: { readonly at: Vec2; readonly edges: number };
}

/** Points by the square cell they lie in, so that near ones are found without asking all. */
const grid = (cell: number) => {
  const cells = new Map<string, number[]>();
  const index = (x: number): number => Math.floor(x / cell);
  return {
    put: (p: Vec2, number: number): void => {
      const key = `${index(p[0])},${index(p[1])}`;
      const there = cells.get(key);
      if (there === undefined) cells.set(key, [number]);
      else there.push(number);
    },
    /** Numbers put within one cell of p. */
    near: (p: Vec2): number[] =>
      [-1, 0, 1].flatMap((dx) => [-1, 0, 1].flatMap((dy) => cells.get(`${index(p[0]) + dx},${index(p[1]) + dy}`) ?? [])),
  };
};

/** Numbers for points, the same for points nearer than SAME_POINT. */
const pointNumbers = () => {
  const points: Vec2[] = [];
  const { put, near } = grid(SAME_POINT);
  const numberOf = (p: Vec2): number => {
    const found = near(p).find((k) => length2(sub2(points[k]!, p)) < SAME_POINT);
    if (found !== undefined) return found;
    put(p, points.length);
    return points.push(p) - 1;
  };
  return { points, numberOf };
};

/** Joins loose ends nearest first, as long as they are no further apart than `gap`; returns where each point went. */
const healGaps = (points: readonly Vec2[], loose: readonly number[], gap: number) => {
  const pairs: { readonly a: number; readonly b: number; readonly apart: number }[] = [];
  const { put, near } = grid(Math.max(gap, SAME_POINT));
  for (const a of loose) {
    for (const b of near(points[a]!)) {
      const apart = length2(sub2(points[a]!, points[b]!));
      if (apart <= gap) pairs.push({ a, b, apart });
    }
    put(points[a]!, a);
  }
  pairs.sort((p, q) => p.apart - q.apart);
  const goes = points.map((_, i) => i);
  const taken = new Set<number>();
  let [count, widest] = [0, 0];
  for (const { a, b, apart } of pairs) {
    if (taken.has(a) || taken.has(b)) continue;
    taken.add(a).add(b);
    goes[b] = a;
    count += 1;
    widest = Math.max(widest, apart);
  }
  return { goes, count, widest };
};

/** Chains edges (mm) into closed loops, whichever way each was drawn, over gaps of up to `gap` mm. */
export const chainCurves = (curves: readonly Curve[], gap: number): Chains => {
  const { points, numberOf } = pointNumbers();
  const seen = new Set<string>();
  let edges = curves.flatMap((curve) => {
    const [a, b] = [numberOf(curve.from), numberOf(curve.to)];
    if (a === b) return []; // no longer than rounding
    const [low, high, bulge] = a < b ? [a, b, curve.bulge] : [b, a, -curve.bulge];
    const key = `${low},${high},${(bulge || 0).toFixed(4)}`;
    if (seen.has(key)) return [{ a, b, curve, again: true }];
    seen.add(key);
    return [{ a, b, curve, again: false }];
  });
  const doubled = edges.filter((edge) => edge.again).length;
  edges = edges.filter((edge) => !edge.again);
  const meeting = (): number[] => {
    const counts = points.map(() => 0);
    for (const { a, b } of edges) {
      counts[a]! += 1;
      counts[b]! += 1;
    }
    return counts;
  };
  const ends = meeting().flatMap((n, i) => (n === 1 ? [i] : []));
  const healed = healGaps(points, ends, gap);
  edges = edges
    .map((edge) => ({ ...edge, a: healed.goes[edge.a]!, b: healed.goes[edge.b]! }))
    .filter(({ a, b }) => a !== b); // a scrap shorter than the gap
  // what still ends nowhere is taken away, from its end inwards
  const loose: Curve[] = [];
  const counts = meeting();
  const at = points.map((): number[] => []);
  edges.forEach(({ a, b }, k) => {
    at[a]!.push(k);
    at[b]!.push(k);
  });
  const used = edges.map(() => false);
  const dead = counts.flatMap((n, i) => (n === 1 ? [i] : []));
  for (let end = dead.pop(); end !== undefined; end = dead.pop()) {
    const k = at[end]!.find((edge) => !used[edge]);
    if (k === undefined) continue;
    used[k] = true;
    const { a, b, curve } = edges[k]!;
    loose.push(curve);
    for (const i of [a, b]) {
      counts[i]! -= 1;
      if (counts[i] === 1) dead.push(i);
    }
  }
  const common = { healed: { count: healed.count, widest: healed.widest }, loose, doubled };
  const branch = counts.findIndex((n) => n > 2);
  if (branch !== -1) return { loops: [], ...common, branch: { at: points[branch]!, edges: counts[branch]! } };
  const loops: Contour[] = [];
  edges.forEach((first, start) => {
    if (used[start]) return;
    const loop = [];
    let [k, from] = [start, first.a];
    while (!used[k]) {
      used[k] = true;
      const { a, b, curve } = edges[k]!;
      const forward = a === from;
      loop.push(vertex(points[from]![0], points[from]![1], forward ? curve.bulge : -curve.bulge || 0));
      from = forward ? b : a;
      k = at[from]!.find((other) => !used[other]) ?? k;
    }
    loops.push(loop);
  });
  return { loops, ...common };
};

import { type Convex, type Interval, type Vec2, carried, extentWithin, offsetPlanes, separation, union } from '../geometry/index.js';
import { SWEEP_MOTION } from './limits.js';
import type { Planar } from './vBend.js';
import type { Piece, View } from './views.js';

/** A way that a wing goes past bodies at rest: carried along a straight line, or turning through bend angles. */
export type Pass =
  | { readonly kind: 'carry'; readonly pose: Planar; readonly by: Vec2 }
  | { readonly kind: 'turn'; readonly at: (x: number) => Planar; readonly from: number; readonly to: number };

/** Where along the bed a wing meets bodies, and how deep (negative: nearer than allowed, but not touching). mm */
export interface Strike {
  readonly where: readonly Interval[];
  readonly depth: number;
}

export const NO_STRIKE: Strike = { where: [], depth: -Infinity };

export const placed = (outline: Convex, { c, s, x, y }: Planar): Convex =>
  outline.map(([b, h]): Vec2 => [x + c * b - s * h, y + s * b + c * h]);

const planesInWing = (planes: ReturnType<typeof offsetPlanes>, { c, s, x, y }: Planar): { n: Vec2; d: number }[] =>
  planes.map(({ n, d }) => ({ n: [c * n[0] + s * n[1], c * n[1] - s * n[0]], d: d - n[0] * x - n[1] * y }));

/** A convex outline's part with n . p <= d. */
const cutOutline = (outline: Convex, { n, d }: { readonly n: Vec2; readonly d: number }): Convex => {
  const kept: Vec2[] = [];
  outline.forEach((p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    const dp = n[0] * p[0] + n[1] * p[1] - d;
    const dq = n[0] * q[0] + n[1] * q[1] - d;
    if (dp <= 0) kept.push(p);
    if (dp < 0 !== dq < 0 && dp !== 0 && dq !== 0) {
      const t = dp / (dp - dq);
      kept.push([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]);
    }
  });
  return kept;
};

export interface StrikeOptions {
  readonly allowance: number;
  /** Leave out the metal nearer than this to the running bend's tangent line (purposeful contact). */
  readonly beyond?: number;
  /** Leave out pieces that lie on or above the sheet's lower face: they rest on the die top. */
  readonly below?: number;
}

const meetsHere = (piece: Piece, outline: Convex, body: Convex, pose: Planar, cut: { n: Vec2; d: number } | null, margin: number): Strike => {
  const apart = separation(placed(outline, pose), body);
  if (apart > margin) return NO_STRIKE;
  const planes = planesInWing(offsetPlanes(body, margin), pose);
  const extent = extentWithin(piece.solid, cut ? [...planes, cut] : planes);
  return extent ? { where: [extent], depth: -apart } : NO_STRIKE;
};

const joined = (a: Strike, b: Strike): Strike =>
  a.where.length === 0 ? b : b.where.length === 0 ? a : { where: [...a.where, ...b.where], depth: Math.max(a.depth, b.depth) };

/** The largest way that any point within `reach` of the tangent line makes between two places. */
const travel = (p: Planar, q: Planar, reach: number): number =>
  Math.hypot(p.x - q.x, p.y - q.y) + 2 * reach * Math.sin(Math.min(Math.PI, Math.abs(Math.atan2(p.s, p.c) - Math.atan2(q.s, q.c))) / 2);

const turning = (
  piece: Piece, outline: Convex, reach: number, body: Convex, pass: Pass & { kind: 'turn' },
  from: number, to: number, cut: { n: Vec2; d: number } | null, allowance: number,
): Strike => {
  const middle = (from + to) / 2;
  const pose = pass.at(middle);
  // a turn about one centre with a small steady shift: the ends are the furthest from the middle
  const motion = Math.max(travel(pass.at(from), pose, reach), travel(pose, pass.at(to), reach));
  const apart = separation(placed(outline, pose), body);
  if (apart > allowance + motion) return NO_STRIKE;
  if (motion <= SWEEP_MOTION) return meetsHere(piece, outline, body, pose, cut, allowance + motion);
  const first = turning(piece, outline, reach, body, pass, middle, to, cut, allowance);
  // the whole piece is ruled out already: the other half can only repeat it
  if (first.where.some(([a, b]) => a <= piece.along[0] && b >= piece.along[1])) return first;
  return joined(first, turning(piece, outline, reach, body, pass, from, middle, cut, allowance));
};

/** Where along the bed a view's metal comes nearer than the allowance to any of the bodies during the passes. */
export const strike = (view: View, bodies: readonly Convex[], passes: readonly Pass[], options: StrikeOptions): Strike => {
  let all = NO_STRIKE;
  const outwards = view.onGaugeSide ? -1 : 1;
  const cut = options.beyond === undefined ? null : { n: [outwards, 0] as Vec2, d: -options.beyond };
  for (const piece of view.pieces) {
    if (options.below !== undefined && piece.lowest >= options.below) continue;
    const outline = cut ? cutOutline(piece.outline, cut) : piece.outline;
    if (outline.length < 3) continue;
    const reach = Math.max(...outline.map((p) => Math.hypot(p[0], p[1])));
    for (const pass of passes) {
      for (const body of bodies) {
        all = joined(
          all,
          pass.kind === 'carry'
            ? meetsHere(piece, outline, carried(body, [-pass.by[0], -pass.by[1]]), pass.pose, cut, options.allowance)
            : turning(piece, outline, reach, body, pass, pass.from, pass.to, cut, options.allowance),
        );
      }
    }
  }
  return all.where.length > 1 ? { where: union(all.where), depth: all.depth } : all;
};

import { type Interval, type Planar, type Shape, type Vec2, extentWithin, gapOf, shapeOf, union } from '../geometry/index.js';
import { type Body, planesSeen, sweptBody } from './body.js';
import { NOSE_ALLOWANCE, ROUGH_ALONG, ROUGH_MOTION, SWEEP_MOTION } from './limits.js';
import type { Piece, View } from './views.js';

/** A way that a wing goes past bodies at rest: carried along a straight line, or turning through bend angles. */
export type Pass =
  | { readonly kind: 'carry'; readonly pose: Planar; readonly by: Vec2 }
  | { readonly kind: 'turn'; readonly at: (x: number) => Planar; readonly from: number; readonly to: number };

/** Where along the bed a wing meets bodies, and how deep where it was looked (negative: nearer than allowed, but not touching). mm */
export interface Strike {
  readonly where: readonly Interval[];
  readonly depth: number;
}

export const NO_STRIKE: Strike = { where: [], depth: -Infinity };

/** An extent that ends this near to the piece's own end is all of it. mm */
const ROUNDING = 1e-6;

/** A piece no longer than this along the bed is ruled out whole: cutting it finer would gain nothing. mm */
const THIN = 4;

interface Cut {
  readonly n: Vec2;
  readonly d: number;
}

export interface StrikeOptions {
  readonly allowance: number;
  /** Leave out the metal nearer than this to the running bend's tangent line (purposeful contact). */
  readonly beyond?: number;
  /** Leave out pieces that lie on or above the sheet's lower face: they rest on the die top. An arc that leaves it may touch. */
  readonly below?: number;
  /** Ask only of the metal on the far side of the wing's own tangent line: it dips while the wing rises. */
  readonly across?: boolean;
  /** Ask only of the metal that lies flat with the wing, or only of the rest. */
  readonly only?: 'flat' | 'risen';
  /** Where along the bed, looked at closely everywhere: nothing is ruled out with the rest but what one look's motion may add. */
  readonly close?: boolean;
}

/** A convex outline's part with n . p <= d. */
const cutOutline = (outline: readonly Vec2[], { n, d }: Cut): readonly Vec2[] => {
  const kept: Vec2[] = [];
  outline.forEach((p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    const dp = n[0] * p[0] + n[1] * p[1] - d;
    const dq = n[0] * q[0] + n[1] * q[1] - d;
    if (dp <= 0) kept.push(p);
    if ((dp < 0 && dq > 0) || (dp > 0 && dq < 0)) {
      const t = dp / (dp - dq);
      kept.push([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]);
    }
  });
  return kept;
};

/** The largest way that any point within `reach` of the tangent line makes between two places. */
const travel = (p: Planar, q: Planar, reach: number): number => {
  const [x, y, c, s] = [p.x - q.x, p.y - q.y, p.c - q.c, p.s - q.s];
  return Math.sqrt(x * x + y * y) + reach * Math.sqrt(c * c + s * s);
};

/** The half-planes of the question that is being asked. */
const planes: number[] = [];

const AT_REST: Vec2 = [0, 0];

/** What one piece of a view meets, gathered over passes and bodies. */
class Meeting {
  readonly where: Interval[] = [];
  depth = -Infinity;
  /** Set once the whole piece is ruled out: more looks at it cannot add to where. */
  whole = false;
  /** The longest unbroken stretch that is ruled out so far. */
  private low = Infinity;
  private high = -Infinity;

  constructor(private readonly piece: Piece, private readonly shape: Shape, private readonly cut: Cut | null, private readonly close: boolean) {}

  /** Where along the bed metal comes within `margin` of a body. */
  private extent(body: Body, pose: Planar, margin: number): Interval | null {
    const { along, solid } = this.piece;
    if (!this.close && along[1] - along[0] <= THIN) return along;
    let size = planesSeen(body, margin, pose, planes);
    if (this.cut) {
      planes[size++] = this.cut.n[0];
      planes[size++] = this.cut.n[1];
      planes[size++] = this.cut.d;
    }
    return extentWithin(solid, planes, size);
  }

  /** Takes note of a body within `margin` of the piece at a pose, `gap` known. */
  private note(body: Body, pose: Planar, margin: number, gap: number): void {
    const extent = this.extent(body, pose, margin);
    if (!extent) return;
    const { along } = this.piece;
    this.where.push(extent);
    this.depth = Math.max(this.depth, -gap);
    if (extent[0] <= this.high && extent[1] >= this.low) {
      this.low = Math.min(this.low, extent[0]);
      this.high = Math.max(this.high, extent[1]);
    } else if (extent[1] - extent[0] > this.high - this.low) [this.low, this.high] = extent;
    if (this.low <= along[0] + ROUNDING && this.high >= along[1] - ROUNDING) this.whole = true;
  }

  /**
   * Can closer looks within `margin` of this pose tell next to nothing new of where, and is it no deeper here than elsewhere? What they
   * might add, next to nothing, is ruled out with the rest.
   */
  private known(body: Body, pose: Planar, margin: number, gap: number): boolean {
    if (-gap > this.depth) return false;
    const extent = this.extent(body, pose, margin);
    if (!extent || (extent[0] >= this.low && extent[1] <= this.high)) return true;
    if (this.close || extent[0] < this.low - ROUGH_ALONG || extent[1] > this.high + ROUGH_ALONG) return false;
    this.where.push(extent);
    return true;
  }

  carry(bodies: readonly Body[], pose: Planar, by: Vec2, allowance: number): void {
    for (const still of bodies) {
      if (this.whole) return;
      const body = sweptBody(still, [-by[0], -by[1]]);
      const gap = gapOf(this.shape, pose, body.shape, allowance);
      if (gap <= allowance) this.note(body, pose, allowance, gap);
    }
  }

  turn(bodies: readonly Body[], { at, from, to }: Pass & { readonly kind: 'turn' }, allowance: number): void {
    const [first, last] = [at(from), at(to)];
    // most that is met is met most at an end: closer looks in between then tell nothing new
    for (const pose of [last, first]) this.carry(bodies, pose, AT_REST, allowance);
    this.turnBetween(bodies, at, from, first, to, last, allowance);
  }

  private turnBetween(bodies: readonly Body[], at: (x: number) => Planar, from: number, first: Planar, to: number, last: Planar, allowance: number): void {
    if (this.whole) return;
    const middle = (from + to) / 2;
    const pose = at(middle);
    // a turn about one centre with a small steady shift: the ends are the furthest from the middle
    const motion = Math.max(travel(first, pose, this.shape.reach), travel(pose, last, this.shape.reach));
    const margin = allowance + motion;
    const near: Body[] = [];
    for (const body of bodies) {
      const gap = gapOf(this.shape, pose, body.shape, margin);
      if (gap > margin) continue;
      if (motion <= Math.max(SWEEP_MOTION, Math.min(this.close ? 0 : ROUGH_MOTION, -gap / 4))) this.note(body, pose, margin, gap);
      else if (!this.known(body, pose, margin, gap)) near.push(body);
    }
    if (near.length === 0) return;
    // the end of the stroke first: it is where most strikes are
    this.turnBetween(near, at, middle, pose, to, last, allowance);
    this.turnBetween(near, at, from, first, middle, pose, allowance);
  }
}

/** Outlines cut at a distance from the bend, kept with their piece. */
const cutShapes = new WeakMap<Piece, Map<string, Shape | null>>();

const shapeBeyond = (piece: Piece, cut: Cut): Shape | null => {
  let known = cutShapes.get(piece);
  if (!known) cutShapes.set(piece, (known = new Map()));
  const key = `${cut.n[0]}|${cut.d}`;
  let shape = known.get(key);
  if (shape === undefined) {
    const outline = cutOutline(piece.outline, cut);
    shape = outline.length < 3 ? null : shapeOf(outline);
    known.set(key, shape);
  }
  return shape;
};

/** Metal reaches over its tangent line when it does so by more than rounding. mm */
const OVER_THE_LINE = 0.05;

const cutOf = (view: View, { beyond, across }: StrikeOptions): Cut | null => {
  const inwards = view.onGaugeSide ? -1 : 1;
  if (across) return { n: [-inwards, 0], d: -OVER_THE_LINE };
  return beyond === undefined ? null : { n: [inwards, 0], d: -beyond };
};

/** Where along the bed a view's metal comes nearer than the allowance to any of the bodies during the passes. */
export const strike = (view: View, bodies: readonly Body[], passes: readonly Pass[], options: StrikeOptions): Strike => {
  const cut = cutOf(view, options);
  const where: Interval[] = [];
  let depth = -Infinity;
  for (const piece of view.pieces) {
    if (options.below !== undefined && piece.lowest >= options.below) continue;
    if (options.only !== undefined && piece.flat !== (options.only === 'flat')) continue;
    const shape = cut ? shapeBeyond(piece, cut) : piece.shape;
    if (!shape) continue;
    const meeting = new Meeting(piece, shape, cut, options.close ?? false);
    const allowance = options.below !== undefined && piece.leavesTop ? Math.min(NOSE_ALLOWANCE, options.allowance) : options.allowance;
    for (const pass of passes) {
      if (pass.kind === 'carry') meeting.carry(bodies, pass.pose, pass.by, allowance);
      else meeting.turn(bodies, pass, allowance);
    }
    // what an end face keeps is added by who asks: where less is asked, so much less is told
    const spared = options.allowance - allowance;
    where.push(...meeting.where.map(([a, b]): Interval => {
      const less = Math.min(spared, (b - a) / 2);
      return [a + less, b - less];
    }));
    depth = Math.max(depth, meeting.depth);
  }
  return where.length === 0 ? NO_STRIKE : { where: union(where), depth };
};

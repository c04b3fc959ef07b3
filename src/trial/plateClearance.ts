import { type Planar, type Rigid, type Solid, type Vec3, cross3, dot3, gapOf, length2, length3, moved, sub3, turn } from '../geometry/index.js';
import type { Conflict } from './conflict.js';
import { PLATE_MOTION, PLATE_OVERLAP } from './limits.js';
import type { Setting } from './setting.js';
import { startOf, wingsAt } from './stroke.js';
import type { Branch, Piece, View } from './views.js';

/** A wing's planar place as a motion of (along, b, h). */
export const motionOf = ({ c, s, x, y }: Planar): Rigid => ({ x: [1, 0, 0], y: [0, c, s], z: [0, -s, c], o: [0, x, y] });

interface Axes {
  readonly edges: readonly Vec3[];
  readonly normals: readonly Vec3[];
}

/** A body's own edges and normals, kept with it: moved bodies turn them. */
const axesKept = new WeakMap<Solid, Axes>();

export const axesOf = (solid: Solid): Axes => {
  let known = axesKept.get(solid);
  if (!known) axesKept.set(solid, (known = { edges: directions(solid), normals: normals(solid) }));
  return known;
};

/** The axes of a body moved by `at`. */
export const axesAt = ({ edges, normals: faces }: Axes, at: Rigid): Axes => ({ edges: edges.map((v) => turn(at, v)), normals: faces.map((v) => turn(at, v)) });

const directions = (solid: Solid): readonly Vec3[] => {
  const found: Vec3[] = [];
  const take = (v: Vec3): void => {
    const size = length3(v);
    if (size < 1e-9) return;
    const u: Vec3 = [v[0] / size, v[1] / size, v[2] / size];
    if (!found.some((w) => length3(cross3(u, w)) < 1e-6)) found.push(u);
  };
  for (const face of solid.faces) {
    face.forEach((i, k) => take(sub3(solid.corners[face[(k + 1) % face.length]!]!, solid.corners[i]!)));
  }
  return found;
};

const normals = (solid: Solid): readonly Vec3[] => {
  const found: Vec3[] = [];
  for (const face of solid.faces) {
    const [a, b, c] = [solid.corners[face[0]!]!, solid.corners[face[1]!]!, solid.corners[face[2]!]!];
    const n = cross3(sub3(b, a), sub3(c, b));
    const size = length3(n);
    if (size < 1e-12) continue;
    const u: Vec3 = [n[0] / size, n[1] / size, n[2] / size];
    if (!found.some((w) => length3(cross3(u, w)) < 1e-6)) found.push(u);
  }
  return found;
};

/** How far two convex bodies are apart along the best separating axis, mm; negative is the depth of their overlap. */
export const apart = (one: Solid, two: Solid, oneAxes = axesOf(one), twoAxes = axesOf(two)): number => {
  let best = -Infinity;
  const along = (axis: Vec3): void => {
    let [aLow, aHigh, bLow, bHigh] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const p of one.corners) {
      const d = dot3(p, axis);
      aLow = Math.min(aLow, d);
      aHigh = Math.max(aHigh, d);
    }
    for (const p of two.corners) {
      const d = dot3(p, axis);
      bLow = Math.min(bLow, d);
      bHigh = Math.max(bHigh, d);
    }
    best = Math.max(best, bLow - aHigh, aLow - bHigh);
  };
  for (const n of oneAxes.normals) along(n);
  for (const n of twoAxes.normals) along(n);
  if (best > 0) return best;
  for (const u of oneAxes.edges) {
    for (const v of twoAxes.edges) {
      const n = cross3(u, v);
      const size = length3(n);
      if (size > 1e-6) along([n[0] / size, n[1] / size, n[2] / size]);
    }
  }
  return best;
};

/** The front wing's place in the gauge wing's frame at bend angle x (degrees). */
export const frontInGauge = (bend: Setting['bend'], x: number): Planar => {
  const { gauge: g, front: f } = wingsAt(bend, x);
  const [dx, dy] = [f.x - g.x, f.y - g.y];
  return { c: g.c * f.c + g.s * f.s, s: g.c * f.s - g.s * f.c, x: g.c * dx + g.s * dy, y: g.c * dy - g.s * dx };
};

/** How far a piece reaches from the other wing's tangent line, which its own wing stands to as `at`. mm */
const reachFrom = ({ outline }: Piece, { c, s, x, y }: Planar): number => Math.max(...outline.map((p) => length2([x + c * p[0] - s * p[1], y + s * p[0] + c * p[1]])));

const inverse = ({ c, s, x, y }: Planar): Planar => ({ c, s: -s, x: -(c * x + s * y), y: s * x - c * y });

/**
 * The deepest overlap of two views' metal over the stroke, mm: never less than it is, and where it decides at most PLATE_MOTION
 * more. It looks closer only where what is not yet looked at could be too deep, and just as closely from either side: a stroke
 * and the same stroke turned round with its tools have one answer.
 */
const deepest = (setting: Setting, gauge: View, front: View): number => {
  const { bend } = setting;
  const flat = frontInGauge(bend, startOf(bend));
  const back = inverse(flat);
  let worst = -Infinity;
  const search = (from: number, to: number, a: Piece, b: Piece, reach: number): void => {
    const middle = (from + to) / 2;
    const turned = ((to - from) / 2) * (Math.PI / 180);
    // both wings turn by half: relative to each other a point moves by its lever arm times the whole turn, and a little with the arc
    const motion = 2 * reach * turned;
    const pose = frontInGauge(bend, middle);
    // outlines along the bed that stay apart settle most questions; the bodies themselves are asked only where those meet
    let gap = gapOf(b.shape, pose, a.shape, motion);
    if (gap <= motion) {
      const at = motionOf(pose);
      gap = Math.max(gap, apart(a.solid, moved(b.solid, at), axesOf(a.solid), axesAt(axesOf(b.solid), at)));
    }
    const most = motion - gap;
    if (most <= PLATE_OVERLAP || motion < PLATE_MOTION) worst = Math.max(worst, most);
    else if (-gap > PLATE_OVERLAP) worst = Math.max(worst, -gap);
    else {
      search(middle, to, a, b, reach);
      if (worst <= PLATE_OVERLAP) search(from, middle, a, b, reach);
    }
  };
  for (const a of gauge.pieces) {
    for (const b of front.pieces) {
      if (a.along[0] > b.along[1] || b.along[0] > a.along[1]) continue;
      search(startOf(bend), bend.bendAngleUnderLoad, a, b, Math.max(reachFrom(a, back), reachFrom(b, flat)) + bend.allowance);
      if (worst > PLATE_OVERLAP) return worst;
    }
  }
  return worst;
};

/** Plates of the two wings that run into each other during the stroke. Answers are kept with the two branches and the two views. */
export const createPlateClearance = (): ((setting: Setting) => readonly Conflict[]) => {
  const depths = new WeakMap<View, WeakMap<View, number>>();
  const kept = new WeakMap<Branch, WeakMap<Branch, readonly Conflict[]>>();
  // a view belongs to one running bend, and a seat has one stroke: two views meet at the same angles whatever the tools
  const depthOf = (setting: Setting, gauge: View, front: View): number => {
    let others = depths.get(gauge);
    if (!others) depths.set(gauge, (others = new WeakMap()));
    let depth = others.get(front);
    if (depth === undefined) others.set(front, (depth = deepest(setting, gauge, front)));
    return depth;
  };
  const between = (setting: Setting, one: Branch, other: Branch): readonly Conflict[] => {
    let mine = kept.get(one);
    if (!mine) kept.set(one, (mine = new WeakMap()));
    let conflicts = mine.get(other);
    if (!conflicts) {
      const fronts = other.views.filter((v) => !v.onGaugeSide);
      mine.set(other, (conflicts = one.views.filter((v) => v.onGaugeSide).flatMap((gauge) => fronts.flatMap((front): Conflict[] => {
        // the two wings themselves only meet when folded flat on each other: a hem, not a V bend
        if (gauge.wing && front.wing) return [];
        const by = depthOf(setting, gauge, front);
        return by > PLATE_OVERLAP ? [{ code: 'plate on plate', body: `plate ${front.plate}`, phase: 'stroke', by, view: gauge }] : [];
      }))));
    }
    return conflicts;
  };
  return (setting) => setting.branches.flatMap((one) => setting.branches.flatMap((other) => between(setting, one, other)));
};

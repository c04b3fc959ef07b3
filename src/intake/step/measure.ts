import { type Vec3, add3, cross3, dot3, length3, scale3, sub3 } from '../../geometry/index.js';
import { NO_LENGTH, SAME_POINT } from '../tolerances.js';
import type { Edge, EdgeUse, Face } from './brep.js';

/** A face's area (mm2) and what it adds to the volume (mm3): a third of the integral of (p - pole) over its outward area. */
export interface Measured {
  readonly area: number;
  readonly volume: number;
}

const sum = (all: readonly Vec3[]): Vec3 => all.reduce((a, b) => add3(a, b), [0, 0, 0] as Vec3);

/** Half the integral of p x dp along an edge, about `pole`: true for lines and arcs, by chords for other curves. */
const sweptBy = ({ from, to, curve, points }: Edge, pole: Vec3): Vec3 => {
  if (curve.kind !== 'circle') return scale3(sum(points.slice(1).map((q, i) => cross3(sub3(points[i]!, pole), sub3(q, pole)))), 0.5);
  const segment = (curve.radius ** 2 / 2) * (curve.sweep - Math.sin(curve.sweep));
  return add3(scale3(cross3(sub3(from, pole), sub3(to, pole)), 0.5), scale3(curve.axis, segment / length3(curve.axis)));
};

/** The integral of the outward normal over a face: it hangs on the face's boundary alone (Stokes). */
const vectorArea = (uses: readonly EdgeUse[], edges: readonly Edge[], pole: Vec3): Vec3 =>
  sum(uses.map(({ edge, forward }) => scale3(sweptBy(edges[edge]!, pole), forward ? 1 : -1)));

const toSegment = (p: Vec3, a: Vec3, b: Vec3): number => {
  const d = sub3(b, a);
  const share = Math.max(0, Math.min(1, dot3(sub3(p, a), d) / Math.max(dot3(d, d), Number.MIN_VALUE)));
  return length3(sub3(p, add3(a, scale3(d, share))));
};

/** A line, or a spline drawn as one. */
const isStraight = ({ from, to, curve, points }: Edge): boolean => curve.kind === 'line' || (curve.kind === 'other' && points.every((p) => toSegment(p, from, to) < NO_LENGTH));

/**
 * A wall that runs on straight from one curve to its like: two straight edges of one length and direction, two curves between. The
 * strips between the chords of the first curve; undefined for other faces.
 */
const wall = (loops: Face['loops'], edges: readonly Edge[], pole: Vec3): Measured | undefined => {
  const [loop] = loops;
  if (loops.length !== 1 || loop?.length !== 4) return undefined;
  const ends = (use: EdgeUse): readonly [Vec3, Vec3] => {
    const { from, to } = edges[use.edge]!;
    return use.forward ? [from, to] : [to, from];
  };
  const first = loop.findIndex(({ edge }, i) => isStraight(edges[edge]!) && isStraight(edges[loop[(i + 2) % 4]!.edge]!));
  if (first < 0) return undefined;
  const [up, one, down, other] = [0, 1, 2, 3].map((k) => loop[(first + k) % 4]!) as [EdgeUse, EdgeUse, EdgeUse, EdgeUse];
  const [[a, b], [c, d]] = [ends(up), ends(down)];
  // a loop turned inside out is listed against its run
  const [over, back] = length3(sub3(ends(one)[0], b)) < SAME_POINT ? [one, other] : [other, one];
  const way = sub3(b, a);
  if (length3(sub3(way, sub3(c, d))) > SAME_POINT || length3(sub3(ends(over)[0], b)) > SAME_POINT || length3(sub3(ends(back)[1], a)) > SAME_POINT) return undefined;
  const { points } = edges[back.edge]!;
  const along = back.forward ? points : [...points].reverse();
  // the far curve must be the near one moved: its middle is looked for on it
  const far = edges[over.edge]!.points;
  const middle = add3(along[Math.floor(along.length / 2)]!, way);
  const off = Math.min(...far.slice(1).map((q, i) => toSegment(middle, far[i]!, q)));
  if (off > 2 * SAME_POINT) return undefined;
  let [area, volume] = [0, 0];
  // from d along the near curve to a, then up: (next - here) x way looks out of the metal
  along.slice(1).forEach((next, i) => {
    const here = along[i]!;
    const outward = cross3(sub3(next, here), way);
    area += length3(outward);
    volume += dot3(sub3(here, pole), outward) / 3;
  });
  return { area, volume };
};

/** A point of a polyline at a share of its length. */
const atShare = (points: readonly Vec3[], share: number): Vec3 => {
  const lengths = points.slice(1).map((q, i) => length3(sub3(q, points[i]!)));
  let left = share * lengths.reduce((a, b) => a + b, 0);
  const i = lengths.findIndex((l) => (left -= l) <= 0);
  if (i < 0) return points[points.length - 1]!;
  return add3(points[i + 1]!, scale3(sub3(points[i + 1]!, points[i]!), left / Math.max(lengths[i]!, Number.MIN_VALUE)));
};

/** A surface of straight lines from one curve to another, its loop those curves and two of the lines: by triangles between chords. */
const ruled = (loops: Face['loops'], edges: readonly Edge[], pole: Vec3): Measured | undefined => {
  const [loop] = loops;
  if (loops.length !== 1 || loop?.length !== 4) return undefined;
  const first = loop.findIndex(({ edge }, i) => isStraight(edges[edge]!) && isStraight(edges[loop[(i + 2) % 4]!.edge]!));
  if (first < 0) return undefined;
  const pointsOf = ({ edge, forward }: EdgeUse): readonly Vec3[] => (forward ? edges[edge]!.points : [...edges[edge]!.points].reverse());
  const [up, over, back] = [0, 1, 3].map((k) => pointsOf(loop[(first + k) % 4]!)) as [readonly Vec3[], readonly Vec3[], readonly Vec3[]];
  // a loop turned inside out is listed against its run
  const inRun = length3(sub3(over[0]!, up[up.length - 1]!)) < SAME_POINT;
  const [near, far] = inRun ? [back, [...over].reverse()] : [over, [...back].reverse()];
  if (length3(sub3(near[near.length - 1]!, up[0]!)) > SAME_POINT || length3(sub3(far[far.length - 1]!, up[up.length - 1]!)) > SAME_POINT) return undefined;
  let [area, volume] = [0, 0];
  const take = (a: Vec3, b: Vec3, c: Vec3): void => {
    const outward = scale3(cross3(sub3(b, a), sub3(c, a)), 0.5);
    area += length3(outward);
    volume += dot3(sub3(a, pole), outward) / 3;
  };
  const strips = 2 * Math.max(near.length, far.length);
  for (let i = 0; i < strips; i++) {
    const [a, b, c, d] = [atShare(near, i / strips), atShare(near, (i + 1) / strips), atShare(far, (i + 1) / strips), atShare(far, i / strips)];
    take(a, b, c);
    take(a, c, d);
  }
  return { area, volume };
};

/** What plain geometry can tell of a face; undefined where the kernel has to be asked. `area` is known of planes and cylinders. */
export const measuredFace = ({ surface, loops, area }: Face, edges: readonly Edge[], pole: Vec3): Measured | undefined => {
  switch (surface.kind) {
    case 'plane':
      return { area, volume: (dot3(sub3(surface.origin, pole), surface.normal) * area) / 3 };
    case 'cylinder': {
      // p = axis point + along the axis + radius outwards: the second has no part along the normal
      const outward = dot3(sub3(surface.origin, pole), vectorArea(loops.flat(), edges, pole));
      return { area, volume: (outward + (surface.hollow ? -1 : 1) * surface.radius * area) / 3 };
    }
    case 'other':
      return wall(loops, edges, pole) ?? (surface.ruled ? ruled(loops, edges, pole) : undefined);
  }
};

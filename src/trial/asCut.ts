import { type Contour, type Rigid, type Vec2, apply, flatten, hull, turn, vertex } from '../geometry/index.js';
import { type Blank, type Developed, type Plate, blank as blankOf, fold, plateNames } from '../sheet/index.js';
import { CHORD_ERROR } from './limits.js';
import type { Trial } from './trial.js';

/** A sheet as it was really cut: its free edges where the given blank has them, and what each flange comes out wrong by. */
export interface AsCut {
  readonly sheet: Developed;
  readonly misses: NonNullable<Trial['misses']>;
}

export type AsCutAnswer = { readonly ok: true; readonly value: AsCut } | { readonly ok: false; readonly sentence: string; readonly by: number };

/** An edge of the given blank is looked for this far from where the part's own blank has it. mm */
const LOOK = 15;
/** A given blank whose corners lie further than this from the part's own, on average, is another blank. mm */
const SAME_BLANK = 5;
/** Edges turned by less than this sine against each other are the same edge. */
const PARALLEL = 0.035;

const middleOf = (outline: readonly Vec2[]): { readonly centre: Vec2; readonly axis: number } => {
  const points = hull(outline);
  let best = { centre: [0, 0] as Vec2, axis: 0 };
  let least = Infinity;
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length]!;
    const axis = Math.atan2(q[1] - p[1], q[0] - p[0]);
    const [c, s] = [Math.cos(axis), Math.sin(axis)];
    const along = points.map((r) => c * r[0] + s * r[1]);
    const across = points.map((r) => c * r[1] - s * r[0]);
    const [a0, a1, b0, b1] = [Math.min(...along), Math.max(...along), Math.min(...across), Math.max(...across)];
    const area = (a1 - a0) * (b1 - b0);
    if (area >= least * (1 - 1e-9)) return;
    least = area;
    const [a, b] = [(a0 + a1) / 2, (b0 + b1) / 2];
    best = { centre: [c * a - s * b, s * a + c * b], axis: a1 - a0 >= b1 - b0 ? axis : axis + Math.PI / 2 };
  });
  return best;
};

const toSegment = (p: Vec2, a: Vec2, b: Vec2): number => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const s = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(p[0] - a[0] - dx * s, p[1] - a[1] - dy * s);
};

const meanDistance = (points: readonly Vec2[], ring: readonly Vec2[]): number =>
  points.reduce((sum, p) => sum + Math.min(...ring.map((a, i) => toSegment(p, a, ring[(i + 1) % ring.length]!))), 0) / points.length;

/** The given outline laid over the part's own: middles of their smallest rectangles together, the way round that fits best. */
const laidOver = (own: readonly Vec2[], given: readonly Vec2[]): { readonly ring: readonly Vec2[]; readonly off: number } => {
  const [to, from] = [middleOf(own), middleOf(given)];
  let best: { ring: readonly Vec2[]; off: number } = { ring: given, off: Infinity };
  for (const flip of [1, -1]) {
    for (let quarter = 0; quarter < 4; quarter++) {
      const angle = to.axis - flip * from.axis + (quarter * Math.PI) / 2;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const ring = given.map(([x, y]): Vec2 => {
        const [dx, dy] = [x - from.centre[0], flip * (y - from.centre[1])];
        return [to.centre[0] + c * dx - s * dy, to.centre[1] + s * dx + c * dy];
      });
      const off = meanDistance(own, ring);
      if (off < best.off - 1e-9) best = { ring, off };
    }
  }
  return best;
};

/** How far outside its place an edge of the given outline lies: along the normal from the edge's middle. Null when there is none. */
const offsetOf = (middle: Vec2, normal: Vec2, ring: readonly Vec2[]): number | null => {
  let nearest: number | null = null;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
    const size = Math.hypot(ex, ey);
    if (size === 0 || Math.abs(ex * normal[0] + ey * normal[1]) > PARALLEL * size) return;
    const along = ((middle[0] - a[0]) * ex + (middle[1] - a[1]) * ey) / (size * size);
    if (along < 0 || along > 1) return;
    const off = (a[0] - middle[0]) * normal[0] + (a[1] - middle[1]) * normal[1];
    if (Math.abs(off) <= LOOK && (nearest === null || Math.abs(off) < Math.abs(nearest))) nearest = off;
  });
  return nearest;
};

/** Each corner moved so that both its edges come to lie at their offsets. */
const edgesMoved = (outline: Contour, offsets: readonly number[], normals: readonly Vec2[]): Contour =>
  outline.map((v, i) => {
    const before = (i + outline.length - 1) % outline.length;
    const [m, n] = [normals[before]!, normals[i]!];
    const [p, q] = [offsets[before]!, offsets[i]!];
    const det = m[0] * n[1] - m[1] * n[0];
    if (Math.abs(det) < PARALLEL) return vertex(v.x + (n[0] * (p + q)) / 2, v.y + (n[1] * (p + q)) / 2, v.bulge);
    return vertex(v.x + (p * n[1] - q * m[1]) / det, v.y + (q * m[0] - p * n[0]) / det, v.bulge);
  });

/**
 * The sheet with the edges of a blank already cut. The given outline is laid middle on middle over the part's own, so that a
 * wrong size is shared by opposite flanges; stops, clearance and proof then see the real edges.
 */
export const asCut = (sheet: Developed, given: Pick<Blank, 'outline'>): AsCutAnswer => {
  const own = blankOf(sheet);
  if (!own.ok) return { ok: false, sentence: own.failure.sentence, by: own.failure.by ?? 0 };
  const laid = laidOver(flatten(own.value.outline, CHORD_ERROR), flatten(given.outline, CHORD_ERROR));
  if (laid.off > SAME_BLANK) {
    return { ok: false, by: laid.off, sentence: `The blank given is not this part's: laid over it as well as it goes, its outline lies ${laid.off.toFixed(1)} mm away on average.` };
  }
  const { part } = sheet;
  const flat = fold(sheet, part.bends.map(() => 0));
  const names = plateNames(part);
  const misses: { bend: string; flange: string; miss: number }[] = [];
  const plates = part.plates.map((plate, index): Plate => {
    const pose: Rigid = flat.poses[index]!;
    const lines = part.bends.flatMap((b) => b.sides.filter((s) => s.plate === index).map((s) => ({ id: b.id, ...s.line })));
    const ring = plate.outline;
    const normals = ring.map((v, i): Vec2 => {
      const w = ring[(i + 1) % ring.length]!;
      const size = Math.hypot(w.x - v.x, w.y - v.y) || 1;
      return [(w.y - v.y) / size, -(w.x - v.x) / size];
    });
    const middles = ring.map((v, i): Vec2 => [(v.x + ring[(i + 1) % ring.length]!.x) / 2, (v.y + ring[(i + 1) % ring.length]!.y) / 2]);
    const offsets = ring.map((v, i) => {
      if (v.bulge !== 0 || lines.some((l) => toSegment(middles[i]!, l.from, l.to) < CHORD_ERROR)) return 0;
      const at = apply(pose, [...middles[i]!, 0]);
      const out = turn(pose, [...normals[i]!, 0]);
      return offsetOf([at[0], at[1]], [out[0], out[1]], laid.ring) ?? 0;
    });
    for (const line of lines) {
      // the free edge that faces away from this bend, furthest out, is the flange's end
      const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]];
      const size = Math.hypot(dx, dy);
      const reach = (i: number): number => Math.abs(dx * (middles[i]![1] - line.from[1]) - dy * (middles[i]![0] - line.from[0])) / size;
      const ends = ring.map((_, i) => i).filter((i) => Math.abs(normals[i]![0] * dx + normals[i]![1] * dy) < PARALLEL * size && reach(i) > CHORD_ERROR);
      const end = ends.sort((a, b) => reach(b) - reach(a))[0];
      if (end !== undefined && lines.length === 1) misses.push({ bend: line.id, flange: names[index]!, miss: offsets[end]! });
    }
    return { ...plate, outline: edgesMoved(ring, offsets, normals) };
  });
  return { ok: true, value: { sheet: { ...sheet, part: { ...part, plates } }, misses } };
};

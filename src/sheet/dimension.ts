import { setback } from '../forming/index.js';
import { type Rigid, type Vec2, type Vec3, apply, dot3, invert, left2, scale2, sub2, sub3, turn, unit2, unit3 } from '../geometry/index.js';
import type { Developed } from './developed.js';
import { fold } from './fold.js';
import type { Dimension, Feature, Part } from './part.js';
import { path } from './tree.js';

/** The plane that a feature gives, in its plate's frame: a point of it and the normal out of the metal. mm */
export interface FeaturePlane {
  readonly point: Vec3;
  readonly normal: Vec3;
  /** The ends of the edge or corner; a face has none. */
  readonly ends: readonly Vec3[];
}

/** One place where a dimension is read: from the datum's plane to a point of the other feature. */
export interface DimensionReading {
  readonly datum: Feature;
  readonly other: Feature;
  /** On a face: x, y in its plate's frame. On an edge or corner: the share of its length. */
  readonly at: Vec2 | number;
}

const flat = (p: Vec2): Vec3 => [p[0], p[1], 0];

/** The straight edge of a plate's outline that lies nearest to a point: index into the outline. */
export const edgeAt = (part: Part, plate: number, at: Vec2): number => {
  const { outline } = part.plates[plate]!;
  let best = 0;
  let least = Infinity;
  outline.forEach((v, i) => {
    const w = outline[(i + 1) % outline.length]!;
    const [dx, dy] = [w.x - v.x, w.y - v.y];
    const size = dx * dx + dy * dy;
    if (v.bulge !== 0 || size === 0) return;
    const s = Math.min(1, Math.max(0, ((at[0] - v.x) * dx + (at[1] - v.y) * dy) / size));
    const off = Math.hypot(at[0] - v.x - s * dx, at[1] - v.y - s * dy);
    if (off < least) [best, least] = [i, off];
  });
  return best;
};

/** The plane of a feature. A corner is where the outside is measured to: the outer apex, past 90 degrees the outer tangent. */
export const featurePlane = (sheet: Developed, feature: Feature): FeaturePlane => {
  const { part } = sheet;
  if (feature.kind === 'face') {
    const up = feature.side === 'A' ? 1 : -1;
    return { point: [0, 0, (up * part.thickness) / 2], normal: [0, 0, up], ends: [] };
  }
  if (feature.kind === 'edge') {
    const { outline } = part.plates[feature.plate]!;
    const i = edgeAt(part, feature.plate, feature.at);
    const [v, w] = [outline[i]!, outline[(i + 1) % outline.length]!];
    const out = unit2([w.y - v.y, v.x - w.x]);
    return { point: [(v.x + w.x) / 2, (v.y + w.y) / 2, 0], normal: flat(out), ends: [[v.x, v.y, 0], [w.x, w.y, 0]] };
  }
  const bend = part.bends[feature.bend]!;
  const side = bend.sides[0].plate === feature.plate ? 0 : 1;
  const { from, to } = bend.sides[side].line;
  const out = scale2(left2(unit2(sub2(to, from))), side === 0 ? 1 : -1);
  const by = setback(bend.insideRadius, part.thickness, bend.bendAngle);
  const moved = (p: Vec2): Vec3 => [p[0] + out[0] * by, p[1] + out[1] * by, 0];
  return { point: moved([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]), normal: flat(out), ends: [moved(from), moved(to)] };
};

const pointOf = (sheet: Developed, { other, at }: DimensionReading): Vec3 => {
  const { point, ends } = featurePlane(sheet, other);
  if (typeof at !== 'number') return [at[0], at[1], point[2]];
  const [p, q] = [ends[0]!, ends[1]!];
  return [p[0] + (q[0] - p[0]) * at, p[1] + (q[1] - p[1]) * at, p[2]];
};

/** mm from the datum's plane to the point of the other feature, in the fold `poses`; negative inside the datum's metal. */
export const heightOver = (sheet: Developed, poses: readonly Rigid[], reading: DimensionReading): number => {
  const plane = featurePlane(sheet, reading.datum);
  const pose = poses[reading.datum.plate]!;
  return dot3(turn(pose, plane.normal), sub3(apply(poses[reading.other.plate]!, pointOf(sheet, reading)), apply(pose, plane.point)));
};

/** The bends that a reading depends on: those between its plates, and those whose corners it is read from. */
export const bendsOf = (part: Part, { datum, other }: Pick<DimensionReading, 'datum' | 'other'>): readonly number[] => [
  ...new Set([...path(part, datum.plate, other.plate), ...[datum, other].flatMap((f) => (f.kind === 'corner' ? [f.bend] : []))]),
];

/** Box of a plate's outline in two directions of space. */
const shadow = (part: Part, poses: readonly Rigid[], plate: number, u: Vec3): readonly [number, number] => {
  const along = part.plates[plate]!.outline.map((v) => dot3(u, apply(poses[plate]!, [v.x, v.y, 0])));
  return [Math.min(...along), Math.max(...along)];
};

const shared = (datum: readonly [number, number], other: readonly [number, number]): readonly [number, number] => {
  const [low, high] = [Math.max(datum[0], other[0]), Math.min(datum[1], other[1])];
  if (low <= high) return [low, high];
  const nearest = other[0] > datum[1] ? other[0] : other[1];
  return [nearest, nearest];
};

/**
 * Where a dimension is read: from the first feature's plane to the second feature, at its middle and at both ends along the bed
 * direction of the first bend between them, as far as the two face each other. `angles` as for `fold`.
 */
export const readings = (sheet: Developed, dimension: Pick<Dimension, 'between'>, angles: readonly number[]): readonly DimensionReading[] => {
  const [datum, other] = dimension.between;
  const { part } = sheet;
  const plane = featurePlane(sheet, other);
  if (other.kind !== 'face') return [0, 1, 0.5].map((at) => ({ datum, other, at }));
  const { poses } = fold(sheet, angles);
  const across = path(part, datum.plate, other.plate)[0];
  const normal = turn(poses[other.plate]!, plane.normal);
  const line = across === undefined ? null : part.bends[across]!.sides.find((s) => s.plate === datum.plate)!.line;
  const u = line ? turn(poses[datum.plate]!, flat(unit2(sub2(line.to, line.from)))) : turn(poses[other.plate]!, [1, 0, 0]);
  // u lies in the datum's plane; in the other face's plane too where the faces are parallel
  const level = unit3(sub3(u, [normal[0] * dot3(u, normal), normal[1] * dot3(u, normal), normal[2] * dot3(u, normal)]));
  const w: Vec3 = [normal[1] * level[2] - normal[2] * level[1], normal[2] * level[0] - normal[0] * level[2], normal[0] * level[1] - normal[1] * level[0]];
  const [us, ws] = [level, w].map((d) => shared(shadow(part, poses, datum.plate, d), shadow(part, poses, other.plate, d)));
  const h = dot3(normal, apply(poses[other.plate]!, plane.point));
  const back = invert(poses[other.plate]!);
  const middle = (ws![0] + ws![1]) / 2;
  return [us![0], us![1], (us![0] + us![1]) / 2].map((a) => {
    const point = apply(back, [level[0] * a + w[0] * middle + normal[0] * h, level[1] * a + w[1] * middle + normal[1] * h, level[2] * a + w[2] * middle + normal[2] * h]);
    return { datum, other, at: [point[0], point[1]] as const };
  });
};

/** The dimension's value on the part as drawn or formed, mm. */
export const valueOf = (sheet: Developed, dimension: Pick<Dimension, 'between'>, angles = sheet.part.bends.map((b) => b.bendAngle)): number => {
  const at = readings(sheet, dimension, angles);
  return Math.abs(heightOver(sheet, fold(sheet, angles).poses, at[at.length - 1]!));
};

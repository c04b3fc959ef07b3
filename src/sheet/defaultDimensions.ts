import { type Rigid, type Vec2, apply, dot2, dot3, left2, length3, cross3, scale2, sub2, sub3, turn, unit2 } from '../geometry/index.js';
import type { Developed } from './developed.js';
import { valueOf } from './dimension.js';
import { fold } from './fold.js';
import type { Dimension, Feature, Side } from './part.js';
import { neighboursOf, path } from './tree.js';

/** Faces and edges within this sine are parallel. */
const PARALLEL = 1e-3;
/** Bend angles so near to 90 are square: the flange is measured from the neighbour's outer face. Degrees. */
const SQUARE = 0.5;
/** What is shorter than this is no dimension of a drawing, and ISO 2768-1 begins with it. mm */
const LEAST = 0.5;

/** Out of a plate, square to the tangent line of one of its bends. */
const outOf = (sheet: Developed, plate: number, bend: number): Vec2 => {
  const { sides } = sheet.part.bends[bend]!;
  const side = sides[0].plate === plate ? 0 : 1;
  return scale2(left2(unit2(sub2(sides[side].line.to, sides[side].line.from))), side === 0 ? 1 : -1);
};

/** Do two unit vectors point away from each other? */
const opposed = (a: Vec2, b: Vec2): boolean => dot2(a, b) < 0 && Math.abs(dot2(left2(a), b)) <= PARALLEL;

/** The free edge of a flange that faces away from its bend, furthest out; null where there is none parallel to the bend. */
const farEdge = (sheet: Developed, plate: number, bend: number): Vec2 | null => {
  const { outline } = sheet.part.plates[plate]!;
  const out = outOf(sheet, plate, bend);
  let best: Vec2 | null = null;
  let most = -Infinity;
  outline.forEach((v, i) => {
    const w = outline[(i + 1) % outline.length]!;
    const size = Math.hypot(w.x - v.x, w.y - v.y);
    if (v.bulge !== 0 || size < LEAST) return;
    const normal = [(w.y - v.y) / size, (v.x - w.x) / size] as const;
    if (!opposed(normal, out)) return;
    const reach = -(v.x * out[0] + v.y * out[1]);
    if (reach > most) [best, most] = [[(v.x + w.x) / 2, (v.y + w.y) / 2], reach];
  });
  return best;
};

/** The side of a plate that faces away from a point of space. */
const awayFrom = (poses: readonly Rigid[], plate: number, point: readonly [number, number, number]): Side => {
  const pose = poses[plate]!;
  return dot3(turn(pose, [0, 0, 1]), sub3(point, pose.o)) > 0 ? 'B' : 'A';
};

/** The outer face of the plate that a flange stands on: outside of their bend. */
const outerFace = (sheet: Developed, plate: number, bend: number): Feature =>
  ({ kind: 'face', plate, side: sheet.part.bends[bend]!.direction === 'A' ? 'B' : 'A' });

/**
 * The dimensions that a drawing of the part would carry by default, without tolerance: the outside length of every flange, of every
 * plate between two bends, and the overall size between parallel plates that follow each other. Named d1, d2 and so on.
 */
export const defaultDimensions = (sheet: Developed): readonly Dimension[] => {
  const { part } = sheet;
  const neighbours = neighboursOf(part);
  const { poses } = fold(sheet, part.bends.map((b) => b.bendAngle));
  const found: (readonly [Feature, Feature])[] = [];
  const isSquare = (bend: number): boolean => Math.abs(part.bends[bend]!.bendAngle - 90) <= SQUARE;
  /** Nobody measures to a corner of a large radius. */
  const isHit = (bend: number): boolean => part.bends[bend]!.hit !== undefined;
  part.plates.forEach((_, plate) => {
    const joints = neighbours[plate]!;
    for (const { bend, plate: other } of joints) {
      if (joints.length > 1 || part.bends[bend]!.kind !== 'bend' || isHit(bend)) continue;
      const at = farEdge(sheet, plate, bend);
      if (at === null) continue;
      const edge: Feature = { kind: 'edge', plate, at };
      found.push(isSquare(bend) ? [outerFace(sheet, other, bend), edge] : [{ kind: 'corner', plate, bend }, edge]);
    }
    joints.forEach((one, i) => joints.slice(i + 1).forEach((two) => {
      if (isHit(one.bend) || isHit(two.bend)) return;
      const [p, q] = [outOf(sheet, plate, one.bend), outOf(sheet, plate, two.bend)];
      if (!opposed(p, q) || (isSquare(one.bend) && isSquare(two.bend))) return;
      found.push([{ kind: 'corner', plate, bend: one.bend }, { kind: 'corner', plate, bend: two.bend }]);
    }));
  });
  const isFacet = (plate: number): boolean => neighbours[plate]!.length === 2 && neighbours[plate]!.every(({ bend }) => isHit(bend));
  const normals = poses.map((pose) => turn(pose, [0, 0, 1]));
  const parallel = (a: number, b: number): boolean => length3(cross3(normals[a]!, normals[b]!)) < PARALLEL;
  part.plates.forEach((_, a) => part.plates.forEach((__, b) => {
    if (b <= a || isFacet(a) || isFacet(b) || !parallel(a, b)) return;
    const way = path(part, a, b);
    if (way.length < 2) return;
    let here = a;
    const between = way.slice(0, -1).map((bend) => (here = part.bends[bend]!.sides.find((s) => s.plate !== here)!.plate));
    if (between.some((plate) => parallel(a, plate))) return;
    const apart = Math.abs(dot3(normals[a]!, sub3(apply(poses[b]!, [0, 0, 0]), poses[a]!.o)));
    if (apart < part.thickness) return;
    found.push([
      { kind: 'face', plate: a, side: awayFrom(poses, a, poses[b]!.o) },
      { kind: 'face', plate: b, side: awayFrom(poses, b, poses[a]!.o) },
    ]);
  }));
  return found.filter((between) => valueOf(sheet, { between }) >= LEAST).map((between, i) => ({ id: `d${i + 1}`, between }));
};

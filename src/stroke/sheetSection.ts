import { type Rigid, type Vec2, type Vec3, add3, apply, compose, flatten, scale3, sub3 } from '../geometry/index.js';
import { type Developed, fold, foldedZone } from '../sheet/index.js';

/** mm by which a rim may leave its chords. */
const CHORD = 0.05;
/** Degrees of bend to a facet. */
const FACET = 3;
/** A plate whose plane is this near to the cut's (sine) has no section. */
const ALONG_THE_CUT = 1e-6;

/** Where the edge from p to q passes the plane at `along`, or null where it does not. */
const crossing = (p: Vec3, q: Vec3, along: number): Vec2 | null => {
  if (p[0] > along === q[0] > along) return null;
  const at = add3(p, scale3(sub3(q, p), (along - p[0]) / (q[0] - p[0])));
  return [at[1], at[2]];
};

/** A piece of cut metal: four corners in (back, up), two on each face. */
export type CutPiece = readonly [Vec2, Vec2, Vec2, Vec2];

const cutPlate = (loops: readonly (readonly Vec2[])[], pose: Rigid, half: number, along: number): CutPiece[] => {
  // the line in which plate and cut meet runs along the plate's in-plane direction that does not go along the bed
  const [x, y] = [pose.x[0], pose.y[0]];
  if (Math.hypot(x, y) < ALONG_THE_CUT) return [];
  const way = sub3(scale3(pose.x, y), scale3(pose.y, x));
  const [low, high] = [-half, half].map((z) =>
    loops
      .flatMap((loop) => {
        const at = loop.map((p) => apply(pose, [p[0], p[1], z]));
        return at.flatMap((p, i) => {
          const met = crossing(p, at[(i + 1) % at.length]!, along);
          return met ? [met] : [];
        });
      })
      .sort((a, b) => (a[0] - b[0]) * way[1] + (a[1] - b[1]) * way[2])) as [Vec2[], Vec2[]];
  const pieces: CutPiece[] = [];
  for (let i = 0; i + 1 < Math.min(low.length, high.length); i += 2) pieces.push([low[i]!, low[i + 1]!, high[i + 1]!, high[i]!]);
  return pieces;
};

/** A strip of a folded zone: where the plane passes the same two edges of both its faces. */
const cutStrip = (A: readonly Vec3[], B: readonly Vec3[], along: number): CutPiece[] => {
  const met = A.flatMap((p, i) => {
    const [a, b] = [crossing(p, A[(i + 1) % 4]!, along), crossing(B[i]!, B[(i + 1) % 4]!, along)];
    return a && b ? [[a, b] as const] : [];
  });
  const [one, two] = met;
  return one && two ? [[one[0], two[0], two[1], one[1]]] : [];
};

/**
 * The cross-section of the sheet by the plane square to the bed at `along` (mm from the middle of the bed), bend i at `angles[i]` degrees and
 * plate `root` at `pose`, as pieces that meet. The plane must not hold a corner: choose an odd place.
 */
export const sheetSection = (sheet: Developed, angles: readonly number[], root: number, pose: Rigid, along: number): readonly CutPiece[] => {
  const { part } = sheet;
  const half = part.thickness / 2;
  const poses = fold(sheet, angles, root).poses.map((own) => compose(pose, own));
  const plates = part.plates.flatMap(({ outline, holes }, p) => cutPlate([outline, ...holes].map((c) => flatten(c, CHORD)), poses[p]!, half, along));
  const zones = part.bends.flatMap(({ sides }, b) =>
    foldedZone(sheet, b, angles[b]!, Math.max(1, Math.ceil(angles[b]! / FACET))).flatMap(({ A, B }) => {
      const placed = (corners: readonly Vec3[]): Vec3[] => corners.map((p) => apply(poses[sides[0].plate]!, p));
      return cutStrip(placed(A), placed(B), along);
    }));
  return [...plates, ...zones];
};

import { type Contour, type Rigid, type Vec2, type Vec3, apply, dot3, invert, length2, sub2, vertex } from '../../geometry/index.js';
import { NO_LENGTH } from '../tolerances.js';
import type { Run } from './loops.js';

/** A corner and the edge that leaves it, with the number of the solid's edge that it came from. */
export interface Corner {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
  readonly edge: number;
}

export const cornerPoint = (c: Corner): Vec2 => [c.x, c.y];

/** A run that is an arc in the plane, as its corners: no piece turns more than 120 degrees, which keeps bulges tame. */
const arcCorners = (run: Run, toPlane: (p: Vec3) => Vec2, normal: Vec3): Corner[] | undefined => {
  if (run.curve.kind !== 'circle' || Math.abs(dot3(run.curve.axis, normal)) < 1 - 1e-7) return undefined;
  const [cx, cy] = toPlane(run.curve.centre);
  const [x, y] = toPlane(run.from);
  const sweep = run.curve.sweep * run.sense * Math.sign(dot3(run.curve.axis, normal));
  const pieces = Math.ceil(Math.abs(sweep) / ((2 * Math.PI) / 3 + 1e-9));
  const start = Math.atan2(y - cy, x - cx);
  const bulge = Math.tan(sweep / pieces / 4);
  return Array.from({ length: pieces }, (_, k) => {
    if (k === 0) return { x, y, bulge, edge: run.edge };
    const a = start + (sweep * k) / pieces;
    const radius = Math.hypot(x - cx, y - cy);
    return { x: cx + radius * Math.cos(a), y: cy + radius * Math.sin(a), bulge, edge: run.edge };
  });
};

/**
 * A loop in the plane of `frame` (x, y; z is the normal), true arcs kept; `approximated` counts the edges that are
 * neither straight nor round and were cut into chords.
 */
export const planeCorners = (loop: readonly Run[], frame: Rigid): { readonly corners: Corner[]; readonly approximated: number } => {
  const inverse = invert(frame);
  const toPlane = (p: Vec3): Vec2 => {
    const [x, y] = apply(inverse, p);
    return [x, y];
  };
  let approximated = 0;
  const corners = loop.flatMap((run): Corner[] => {
    const arc = arcCorners(run, toPlane, frame.z);
    if (arc) return arc;
    if (run.curve.kind !== 'line') approximated++;
    return run.points.slice(0, -1).map((p) => {
      const [x, y] = toPlane(p);
      return { x, y, bulge: 0, edge: run.edge };
    });
  });
  return { corners: dropPoints(corners), approximated };
};

/** Without corners that repeat the one before. */
export const dropPoints = (corners: readonly Corner[]): Corner[] =>
  corners.filter((c, i) => length2(sub2(cornerPoint(c), cornerPoint(corners[(i + 1) % corners.length]!))) > NO_LENGTH);

export const toContour = (corners: readonly Corner[]): Contour => corners.map((c) => vertex(c.x, c.y, c.bulge));

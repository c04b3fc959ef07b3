import { ShapeUtils, Vector2 } from 'three';
import { type Contour, type Vec2, flatten } from '../../geometry/index.js';

const CHORD = 0.2;
/** Cosine of the turn between two pieces of the outline from which on an edge is drawn (20 degrees). */
const SHARP = Math.cos((20 * Math.PI) / 180);

/** A prism along the bed: triangles and edges, (along, back, up) in mm. */
export interface Prism {
  readonly corners: number[];
  readonly edges: number[];
}

const sharpAt = (ring: readonly Vec2[], i: number): boolean => {
  const [p, q, r] = [ring[(i + ring.length - 1) % ring.length]!, ring[i]!, ring[(i + 1) % ring.length]!];
  const [a, b] = [[q[0] - p[0], q[1] - p[1]] as const, [r[0] - q[0], r[1] - q[1]] as const];
  return (a[0] * b[0] + a[1] * b[1]) / (Math.hypot(...a) * Math.hypot(...b) || 1) < SHARP;
};

/** Adds a cross-section in (back, up) drawn out along the bed from `from` to `to`, its origin at (back, up) = `at`. */
export const addPrism = (prism: Prism, profile: Contour, from: number, to: number, at: Vec2): void => {
  const ring = flatten(profile, CHORD).map((p): Vec2 => [p[0] + at[0], p[1] + at[1]]);
  for (const [i, j, k] of ShapeUtils.triangulateShape(ring.map(([x, y]) => new Vector2(x, y)), []) as [number, number, number][]) {
    const [p, q, r] = [ring[i]!, ring[j]!, ring[k]!];
    prism.corners.push(to, ...p, to, ...q, to, ...r, from, ...p, from, ...r, from, ...q);
  }
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    prism.corners.push(from, ...p, from, ...q, to, ...q, from, ...p, to, ...q, to, ...p);
    prism.edges.push(from, ...p, from, ...q, to, ...p, to, ...q);
    if (sharpAt(ring, i)) prism.edges.push(from, ...p, to, ...p);
  });
};

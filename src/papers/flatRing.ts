import { type Contour, type Vec2, arcOf, flatten } from '../geometry/index.js';

/** A contour as straight pieces; `arc[i]` numbers the arc that piece i (from point i to the next) belongs to, -1 for a straight edge. */
export interface FlatRing {
  readonly points: readonly Vec2[];
  readonly arc: readonly number[];
}

/** No piece of an arc turns by more than this, whatever the radius: two facets must look like one curved surface. */
const MOST_TURN = (14 * Math.PI) / 180;

/** Flattens a contour for drawing: arcs leave their chords by no more than `chordError` mm. */
export const flatRing = (contour: Contour, chordError: number): FlatRing => {
  const points: Vec2[] = [];
  const arc: number[] = [];
  contour.forEach((v, i) => {
    if (v.bulge === 0) {
      points.push([v.x, v.y]);
      arc.push(-1);
      return;
    }
    const next = contour[(i + 1) % contour.length]!;
    const { radius } = arcOf([v.x, v.y], [next.x, next.y], v.bulge);
    const error = Math.min(chordError, radius * (1 - Math.cos(MOST_TURN / 2)));
    // the last point is the next corner, which the next edge brings itself
    for (const p of flatten([v, { x: next.x, y: next.y, bulge: 0 }], error).slice(0, -1)) {
      points.push(p);
      arc.push(i);
    }
  });
  return { points, arc };
};

import { type Vec2, flatten, length2, sub2 } from '../geometry/index.js';
import { inLine } from './inLine.js';
import type { Bend, Line, Part } from './part.js';

/** A hole that a bend may pull out of shape. */
export interface NearFeature {
  readonly plate: number;
  /** Index into the plate's holes; absent for a hole in the bend itself. */
  readonly hole?: number;
  readonly bend: string;
  /** mm from the hole's nearest edge to the bend's tangent line; 0 in the bend. */
  readonly distance: number;
  /** mm */
  readonly limit: number;
}

/** mm by which chords may leave a hole's arcs while its distance is measured. */
const CHORD_ERROR = 0.005;

/** Two thicknesses beyond the bend's tangent line. Common practice, no source. */
const holeToBend = (_bend: Bend, thickness: number): number => 2 * thickness;

/** Distance of a point from a line's segment. */
const away = (line: Line, p: Vec2): number => {
  const length = length2(sub2(line.to, line.from));
  const [u, v] = inLine(line, p);
  return Math.hypot(v, u < 0 ? -u : Math.max(0, u - length));
};

/** Distance of point p from the segment a to b. */
const toSegment = (a: Vec2, b: Vec2, p: Vec2): number => (length2(sub2(b, a)) === 0 ? length2(sub2(p, a)) : away({ from: a, to: b }, p));

/**
 * Holes nearer to a bend than its limit (mm, from `limit`), nearest first. Distances are to the tangent line as far as the
 * bend reaches; arcs are measured to 0.005 mm.
 */
export const featuresNearBends = (part: Part, limit: (bend: Bend, thickness: number) => number = holeToBend): NearFeature[] => {
  const found: NearFeature[] = [];
  for (const bend of part.bends) {
    const least = limit(bend, part.thickness);
    if (bend.zone.length > 1) found.push({ plate: bend.sides[0].plate, bend: bend.id, distance: 0, limit: least });
    for (const { plate, line } of bend.sides) {
      part.plates[plate]!.holes.forEach((hole, index) => {
        const points = flatten(hole, CHORD_ERROR);
        const distance = Math.min(
          ...points.map((p) => away(line, p)),
          ...points.flatMap((p, i) => {
            const q = points[(i + 1) % points.length]!;
            return [toSegment(p, q, line.from), toSegment(p, q, line.to)];
          }),
        );
        if (distance < least) found.push({ plate, hole: index, bend: bend.id, distance, limit: least });
      });
    }
  }
  return found.sort((a, b) => a.distance - b.distance);
};

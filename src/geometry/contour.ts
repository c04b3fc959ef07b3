import { type Vec2, cross2, length2, sub2 } from './vec.js';

/**
 * A corner of a closed contour and the edge that leaves it: `bulge` 0 is a straight edge, otherwise an arc with
 * bulge = tan(arc angle / 4), positive turning left (the convention of DXF's LWPOLYLINE).
 */
export interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** A closed contour; the last corner's edge returns to the first. Outlines run counter-clockwise, holes clockwise. */
export type Contour = readonly Vertex[];

export const vertex = (x: number, y: number, bulge = 0): Vertex => ({ x, y, bulge });

/** A full circle as two half arcs, counter-clockwise unless `clockwise`. */
export const circle = (x: number, y: number, radius: number, clockwise = false): Contour => {
  const bulge = clockwise ? -1 : 1;
  return [vertex(x - radius, y, bulge), vertex(x + radius, y, bulge)];
};

/** The circle on which a bulged edge lies. */
export const arcOf = (from: Vec2, to: Vec2, bulge: number): { readonly centre: Vec2; readonly radius: number } => {
  const chord = sub2(to, from);
  // distance from the chord's middle to the centre, along the left normal, in chord lengths
  const h = (1 - bulge * bulge) / (4 * bulge);
  const centre: Vec2 = [(from[0] + to[0]) / 2 - chord[1] * h, (from[1] + to[1]) / 2 + chord[0] * h];
  return { centre, radius: length2(sub2(from, centre)) };
};

/**
 * The contour as points, arcs cut into chords that leave the arc by no more than `chordError` mm.
 * Straight edges keep their corners as they are; the first point is not repeated at the end.
 */
export const flatten = (contour: Contour, chordError: number): Vec2[] => {
  const points: Vec2[] = [];
  contour.forEach((v, i) => {
    points.push([v.x, v.y]);
    if (v.bulge === 0) return;
    const next = contour[(i + 1) % contour.length]!;
    const { centre, radius } = arcOf([v.x, v.y], [next.x, next.y], v.bulge);
    const sweep = 4 * Math.atan(v.bulge);
    // 2 acos(1 - chordError / radius) by the half angle: exact where the radius is huge
    const most = 4 * Math.asin(Math.sqrt(chordError / Math.max(radius, chordError) / 2));
    const pieces = Math.max(2, Math.ceil(Math.abs(sweep) / most));
    const start = Math.atan2(v.y - centre[1], v.x - centre[0]);
    for (let k = 1; k < pieces; k++) {
      const a = start + (sweep * k) / pieces;
      points.push([centre[0] + radius * Math.cos(a), centre[1] + radius * Math.sin(a)]);
    }
  });
  return points;
};

/** Signed area in mm2, arcs exact: positive when the contour runs counter-clockwise. */
export const signedArea = (contour: Contour): number => {
  let twice = 0;
  contour.forEach((v, i) => {
    const next = contour[(i + 1) % contour.length]!;
    twice += cross2([v.x, v.y], [next.x, next.y]);
    if (v.bulge === 0) return;
    const sweep = 4 * Math.atan(v.bulge);
    const { radius } = arcOf([v.x, v.y], [next.x, next.y], v.bulge);
    twice += radius * radius * (sweep - Math.sin(sweep));
  });
  return twice / 2;
};

/** The same contour run the other way round. */
export const reversed = (contour: Contour): Contour =>
  contour.map((_, i) => {
    const at = contour[(contour.length - i) % contour.length]!;
    const edge = contour[(2 * contour.length - i - 1) % contour.length]!;
    return vertex(at.x, at.y, edge.bulge === 0 ? 0 : -edge.bulge);
  });

/** The smallest upright rectangle about the contour, arcs included: [least corner, greatest corner]. */
export const bounds = (contours: readonly Contour[]): readonly [Vec2, Vec2] => {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = (x: number, y: number): void => {
    [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
  };
  for (const contour of contours) {
    contour.forEach((v, i) => {
      take(v.x, v.y);
      if (v.bulge === 0) return;
      const next = contour[(i + 1) % contour.length]!;
      const { centre, radius } = arcOf([v.x, v.y], [next.x, next.y], v.bulge);
      const sweep = 4 * Math.atan(v.bulge);
      const start = Math.atan2(v.y - centre[1], v.x - centre[0]);
      for (let quarter = 0; quarter < 4; quarter++) {
        const a = (quarter * Math.PI) / 2;
        const turned = sweep > 0 ? a - start : start - a;
        const within = ((turned % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
        if (within < Math.abs(sweep)) take(centre[0] + radius * Math.cos(a), centre[1] + radius * Math.sin(a));
      }
    });
  }
  return [[x0, y0], [x1, y1]];
};

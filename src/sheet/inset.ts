import { type Vec2, add2, cross2, left2, scale2, sub2, unit2 } from '../geometry/index.js';

/**
 * A convex polygon (counter-clockwise) with each edge moved inwards by its own distance in mm; edge i runs from corner i
 * to corner i + 1. Same number of corners, in the same order.
 */
export const inset = (corners: readonly Vec2[], distances: readonly number[]): Vec2[] => {
  const edges = corners.map((from, i) => {
    const along = unit2(sub2(corners[(i + 1) % corners.length]!, from));
    return { at: add2(from, scale2(left2(along), distances[i]!)), along };
  });
  return edges.map((edge, i) => {
    const before = edges[(i + edges.length - 1) % edges.length]!;
    const reach = cross2(sub2(edge.at, before.at), edge.along) / cross2(before.along, edge.along);
    return add2(before.at, scale2(before.along, reach));
  });
};

/** A rectangle with one corner in the origin, or the given polygon. */
export const cornersOf = (base: readonly [number, number] | readonly Vec2[]): readonly Vec2[] => {
  if (typeof base[0] !== 'number') return base as readonly Vec2[];
  const [length, width] = base as readonly [number, number];
  return [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ];
};

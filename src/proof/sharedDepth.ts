import { type Vec3, cross3, dot3, length3, sub3 } from '../geometry/index.js';
import type { Manifold } from './engine.js';

/** The least width of a solid, looked at square to each of its faces. mm */
const leastWidth = (solid: Manifold): number => {
  const { numProp, vertProperties, triVerts } = solid.getMesh();
  const points: Vec3[] = [];
  for (let i = 0; i < vertProperties.length; i += numProp) points.push([vertProperties[i]!, vertProperties[i + 1]!, vertProperties[i + 2]!]);
  let least = Infinity;
  for (let i = 0; i < triVerts.length; i += 3) {
    const [a, b, c] = [points[triVerts[i]!]!, points[triVerts[i + 1]!]!, points[triVerts[i + 2]!]!];
    const n = cross3(sub3(b, a), sub3(c, a));
    const size = length3(n);
    if (size === 0) continue;
    const heights = points.map((p) => dot3(n, p) / size);
    least = Math.min(least, Math.max(...heights) - Math.min(...heights));
  }
  return least;
};

/**
 * How deep two solids are in each other: the least width of what they share, piece by piece, since a sliver between mitred
 * edges lies askew to the axes; the deepest piece counts. mm
 */
export const sharedDepth = (a: Manifold, b: Manifold): number => {
  const shared = a.intersect(b);
  const pieces = shared.isEmpty() ? [] : shared.decompose();
  const depth = Math.max(0, ...pieces.map(leastWidth));
  for (const piece of pieces) piece.delete();
  shared.delete();
  return depth;
};

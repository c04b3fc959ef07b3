import { type Contour, type Vec2, flatten, left2, length2, scale2, sub2, vertex } from '../geometry/index.js';
import { crossesItself } from './crossesItself.js';
import type { FlatPiece } from './flatPieces.js';
import { windingIn } from './windingIn.js';

/** mm that a point is taken inside an edge to count the metal there: an overlap narrower than this is not seen. */
const INSIDE = 0.005;
/** mm by which chords may leave an arc while overlaps are looked for. */
const CHORD_ERROR = 0.002;

/** Do the loops of a flat pattern cover any point twice? Their edges cross, or metal lies twice beside an edge. */
export const overlaps = (loops: readonly Contour[]): boolean => {
  if (crossesItself(loops)) return true;
  const rings = loops.map((loop) => flatten(loop, CHORD_ERROR));
  const winding = windingIn(rings);
  return rings.some((ring) =>
    ring.some((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      const edge = sub2(b, a);
      const length = length2(edge);
      if (length < 4 * INSIDE) return false;
      const inwards = scale2(left2(edge), INSIDE / length);
      const middle: Vec2 = [(a[0] + b[0]) / 2 + inwards[0], (a[1] + b[1]) / 2 + inwards[1]];
      return winding(middle) > 1;
    }),
  );
};

/** The first two plates or zones whose metal lies over one another, for the sentence of a refusal. */
export const overlappingPieces = (pieces: readonly FlatPiece[]): readonly [FlatPiece, FlatPiece] | null => {
  const loops = pieces.map((piece): readonly Contour[] => ringsOf(piece));
  for (let i = 0; i < pieces.length; i++) {
    for (let k = i + 1; k < pieces.length; k++) {
      if (overlaps([...loops[i]!, ...loops[k]!])) return [pieces[i]!, pieces[k]!];
    }
  }
  return null;
};

/** A piece's own edges back as contours: they come contour by contour, so a ring ends where the next edge does not follow. */
const ringsOf = (piece: FlatPiece): Contour[] => {
  const rings: { x: number; y: number; bulge: number }[][] = [];
  piece.edges.forEach((edge, k) => {
    const before = piece.edges[k - 1];
    const follows = before !== undefined && before.to[0] === edge.from[0] && before.to[1] === edge.from[1];
    if (!follows) rings.push([]);
    rings[rings.length - 1]!.push({ ...vertex(edge.from[0], edge.from[1], edge.bulge) });
  });
  return rings;
};

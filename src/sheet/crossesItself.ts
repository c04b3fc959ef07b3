import { type Contour, type Vec2, cross2, flatten, sub2 } from '../geometry/index.js';

/** Chords leave an arc by no more than this (mm): enough to see whether a cut-out runs into an edge. */
const CHORD_ERROR = 0.02;

interface Piece {
  readonly a: Vec2;
  readonly b: Vec2;
  readonly ring: number;
  readonly at: number;
  readonly of: number;
}

const side = (a: Vec2, b: Vec2, p: Vec2): number => cross2(sub2(b, a), sub2(p, a));

/** Do the insides of two pieces cross? Touching ends do not count. */
const cross = (p: Piece, q: Piece): boolean =>
  side(p.a, p.b, q.a) * side(p.a, p.b, q.b) < 0 && side(q.a, q.b, p.a) * side(q.a, q.b, p.b) < 0;

/** Do the edges of these contours cross one another, or themselves? Pieces are swept by x, so long outlines stay cheap. */
export const crossesItself = (contours: readonly Contour[]): boolean => {
  const pieces: Piece[] = contours.flatMap((contour, ring) => {
    const points = flatten(contour, CHORD_ERROR);
    return points.map((a, at) => ({ a, b: points[(at + 1) % points.length]!, ring, at, of: points.length }));
  });
  const low = (p: Piece): number => Math.min(p.a[0], p.b[0]);
  const high = (p: Piece): number => Math.max(p.a[0], p.b[0]);
  pieces.sort((p, q) => low(p) - low(q));
  for (let i = 0; i < pieces.length; i++) {
    const p = pieces[i]!;
    for (let k = i + 1; k < pieces.length && low(pieces[k]!) <= high(p); k++) {
      const q = pieces[k]!;
      const apart = Math.abs(p.at - q.at);
      if (p.ring === q.ring && (apart <= 1 || apart === p.of - 1)) continue;
      if (cross(p, q)) return true;
    }
  }
  return false;
};

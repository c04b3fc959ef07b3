import { type Contour, type Vec2, cross2, flatten, length2, sub2 } from '../geometry/index.js';

/** Chords leave an arc by no more than this (mm): enough to see whether a cut-out runs into an edge. */
const CHORD_ERROR = 0.02;

interface Piece {
  readonly a: Vec2;
  readonly b: Vec2;
  readonly ring: number;
  readonly at: number;
  readonly of: number;
}

/** An end this near (mm) to the other piece touches it and does not cross: rounding of a reader and of the layout. */
const TOUCH = 1e-4;

/** Do a and b lie clearly on either side of the line of `of`? */
const parted = (of: Piece, a: Vec2, b: Vec2): boolean => {
  const along = sub2(of.b, of.a);
  const far = TOUCH * length2(along);
  const [p, q] = [cross2(along, sub2(a, of.a)), cross2(along, sub2(b, of.a))];
  return (p > far && q < -far) || (p < -far && q > far);
};

/** Do the insides of two pieces cross? Touching ends do not count. */
const cross = (p: Piece, q: Piece): boolean => parted(p, q.a, q.b) && parted(q, p.a, p.b);

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

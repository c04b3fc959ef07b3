import { type Contour, type Vec2, bounds, vertex } from '../geometry/index.js';
import type { Blank } from '../sheet/index.js';

/** The blank laid along its length: lower left corner of its rectangle in the origin, x along the length, seen from the A side. */
export const blankPlaced = (blank: Blank): Pick<Blank, 'outline' | 'holes' | 'bendLines'> => {
  const turn = (-blank.angle * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const spin = (x: number, y: number): Vec2 => [c * x - s * y, s * x + c * y];
  const spun = (contour: Contour): Contour => contour.map((v) => vertex(...spin(v.x, v.y), v.bulge));
  const [low] = bounds([spun(blank.outline)]);
  const place = (contour: Contour): Contour => spun(contour).map((v) => vertex(v.x - low[0], v.y - low[1], v.bulge));
  const at = (p: Vec2): Vec2 => {
    const q = spin(p[0], p[1]);
    return [q[0] - low[0], q[1] - low[1]];
  };
  return {
    outline: place(blank.outline),
    holes: blank.holes.map(place),
    bendLines: blank.bendLines.map((line) => ({ ...line, from: at(line.from), to: at(line.to) })),
  };
};

/** A bend line's words: id, side and bend angle, said as such. */
export const bendLineWords = ({ id, direction, bendAngle }: Blank['bendLines'][number], degrees: string, digits = 2): string =>
  `${id} ${direction} bend ${Number(bendAngle.toFixed(digits))}${degrees}`;

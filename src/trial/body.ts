import { type Contour, type Convex, type Planar, type Shape, type Vec2, carried, convexPieces, flatten, offsetPlanes, shapeOf } from '../geometry/index.js';
import { CHORD_ERROR } from './limits.js';

/** A convex piece of a tool or machine in (back, up), with what clearance asks of it kept. */
export interface Body {
  readonly polygon: Convex;
  readonly shape: Shape;
  /** The same body as it sweeps when it goes by (x, y); asked for the same few ways again and again. */
  readonly swept: Map<string, Body>;
}

export const bodyOf = (polygon: Convex): Body => ({ polygon, shape: shapeOf(polygon), swept: new Map() });

export const bodiesOf = (contour: Contour, by: Vec2 = [0, 0]): readonly Body[] =>
  convexPieces(flatten(contour, CHORD_ERROR)).map((p) => bodyOf(p.map((q): Vec2 => [q[0] + by[0], q[1] + by[1]])));

export const sweptBody = (body: Body, by: Vec2): Body => {
  if (by[0] === 0 && by[1] === 0) return body;
  const key = `${by[0]},${by[1]}`;
  let found = body.swept.get(key);
  if (!found) body.swept.set(key, (found = bodyOf(carried(body.polygon, by))));
  return found;
};

const planesKept = new WeakMap<Body, Float64Array>();

/** The half-planes of a body and the bevels of its corners: (n, d) one after the other. */
const planesOf = (body: Body): Float64Array => {
  let found = planesKept.get(body);
  if (!found) planesKept.set(body, (found = Float64Array.from(offsetPlanes(body.polygon, 0).flatMap(({ n, d }) => [n[0], n[1], d]))));
  return found;
};

/** Writes the half-planes that hold all within `margin` (mm) of a body, seen from a wing at a pose, for `extentWithin`; answers with how many numbers it wrote. */
export const planesSeen = (body: Body, margin: number, { c, s, x, y }: Planar, into: number[]): number => {
  const planes = planesOf(body);
  for (let k = 0; k < planes.length; k += 3) {
    const nx = planes[k]!;
    const ny = planes[k + 1]!;
    into[k] = c * nx + s * ny;
    into[k + 1] = c * ny - s * nx;
    into[k + 2] = planes[k + 2]! + margin - nx * x - ny * y;
  }
  return planes.length;
};

import { type Contour, type Convex, type Shape, type Vec2, carried, convexPieces, flatten, offsetPlanes, shapeOf } from '../geometry/index.js';
import { CHORD_ERROR } from './limits.js';

/** A convex piece of a tool or machine in (back, up), with what clearance asks of it kept. */
export interface Body {
  readonly polygon: Convex;
  readonly shape: Shape;
  /** The same body as it sweeps when it goes by (x, y); asked for the same few ways again and again. */
  readonly swept: Map<string, Body>;
  readonly planes: Map<number, ReturnType<typeof offsetPlanes>>;
}

export const bodyOf = (polygon: Convex): Body => ({ polygon, shape: shapeOf(polygon), swept: new Map(), planes: new Map() });

export const bodiesOf = (contour: Contour, by: Vec2 = [0, 0]): readonly Body[] =>
  convexPieces(flatten(contour, CHORD_ERROR)).map((p) => bodyOf(p.map((q): Vec2 => [q[0] + by[0], q[1] + by[1]])));

export const sweptBody = (body: Body, by: Vec2): Body => {
  if (by[0] === 0 && by[1] === 0) return body;
  const key = `${by[0]},${by[1]}`;
  let found = body.swept.get(key);
  if (!found) body.swept.set(key, (found = bodyOf(carried(body.polygon, by))));
  return found;
};

export const planesOf = (body: Body, margin: number): ReturnType<typeof offsetPlanes> => {
  let found = body.planes.get(margin);
  if (!found) {
    found = offsetPlanes(body.polygon, margin);
    if (body.planes.size < 64) body.planes.set(margin, found);
  }
  return found;
};

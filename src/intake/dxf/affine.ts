import type { Vec2 } from '../../geometry/index.js';

/** x' = a x + c y + e, y' = b x + d y + f: how a block comes to lie in the drawing. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const AS_DRAWN: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };
/** Entities whose normal points down are drawn in a mirrored plane. */
export const MIRRORED: Affine = { ...AS_DRAWN, a: -1 };

export const placed = (m: Affine, [x, y]: Vec2): Vec2 => [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f];

/** `outer` after `inner`. */
export const after = (outer: Affine, inner: Affine): Affine => {
  const [e, f] = placed(outer, [inner.e, inner.f]);
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e,
    f,
  };
};

export const mirrors = (m: Affine): boolean => m.a * m.d - m.b * m.c < 0;

/** Share by which the two axes may differ in length, or lean, and an arc still be an arc: a part in a million. */
const KEEPS_CIRCLES = 1e-6;

/** Are circles still circles? */
export const keepsCircles = (m: Affine): boolean => {
  const [x, y] = [Math.hypot(m.a, m.b), Math.hypot(m.c, m.d)];
  return Math.abs(x - y) <= KEEPS_CIRCLES * x && Math.abs(m.a * m.c + m.b * m.d) <= KEEPS_CIRCLES * x * y;
};

import { type Vec2, type Vec3 } from './vec.js';
import { type Rigid, apply } from './rigid.js';

/** A convex body: corners, and faces as rings of corner numbers. */
export interface Solid {
  readonly corners: readonly Vec3[];
  readonly faces: readonly (readonly number[])[];
}

/** A convex polygon (x, y, counter-clockwise) from z = low to z = high. */
export const prism = (base: readonly Vec2[], low: number, high: number): Solid => {
  const n = base.length;
  const corners: Vec3[] = [
    ...base.map((p): Vec3 => [p[0], p[1], low]),
    ...base.map((p): Vec3 => [p[0], p[1], high]),
  ];
  const faces: number[][] = [
    base.map((_, i) => n - 1 - i),
    base.map((_, i) => n + i),
    ...base.map((_, i) => [i, (i + 1) % n, n + ((i + 1) % n), n + i]),
  ];
  return { corners, faces };
};

export const moved = (solid: Solid, by: Rigid): Solid => ({
  corners: solid.corners.map((p) => apply(by, p)),
  faces: solid.faces,
});

/**
 * The extent along the first axis of the body's part inside the half-planes of the other two axes; null when
 * nothing is inside. The region runs on for ever along the first axis, so every corner of the cut body lies on one of its
 * own faces and cutting those is enough.
 */
export const extentWithin = (
  solid: Solid,
  planes: readonly { readonly n: Vec2; readonly d: number }[],
): readonly [number, number] | null => {
  let [low, high] = [Infinity, -Infinity];
  for (const face of solid.faces) {
    let ring: Vec3[] = face.map((i) => solid.corners[i]!);
    for (const { n, d } of planes) {
      if (ring.length === 0) break;
      const cut: Vec3[] = [];
      for (let i = 0; i < ring.length; i++) {
        const p = ring[i]!;
        const q = ring[(i + 1) % ring.length]!;
        const dp = n[0] * p[1] + n[1] * p[2] - d;
        const dq = n[0] * q[1] + n[1] * q[2] - d;
        if (dp <= 0) cut.push(p);
        if (dp <= 0 !== dq <= 0) {
          const s = dp / (dp - dq);
          cut.push([p[0] + (q[0] - p[0]) * s, p[1] + (q[1] - p[1]) * s, p[2] + (q[2] - p[2]) * s]);
        }
      }
      ring = cut;
    }
    for (const p of ring) {
      if (p[0] < low) low = p[0];
      if (p[0] > high) high = p[0];
    }
  }
  return low <= high ? [low, high] : null;
};

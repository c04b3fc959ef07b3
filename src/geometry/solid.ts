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

/** Rings that are being cut, as x, y, z one after the other: written in turn and used again by the next question. */
let ring: number[] = [];
let next: number[] = [];
/** The planes that cut a body, as they stand in the question. */
const cutting: number[] = [];

/**
 * The extent along the first axis of the body's part inside half-planes of the other two axes; null when nothing is inside.
 * `planes` holds (ny, nz, d) with ny y + nz z <= d, one after the other, `size` numbers of it. The region runs on for ever along the
 * first axis, so every corner of the cut body lies on one of its own faces and cutting those is enough. Most planes hold
 * the whole body or leave none of it: those are sorted out first.
 */
export const extentWithin = ({ corners, faces }: Solid, planes: ArrayLike<number>, size = planes.length): readonly [number, number] | null => {
  let cuts = 0;
  for (let k = 0; k < size; k += 3) {
    const ny = planes[k]!;
    const nz = planes[k + 1]!;
    const d = planes[k + 2]!;
    let least = Infinity;
    let most = -Infinity;
    for (const p of corners) {
      const over = ny * p[1] + nz * p[2] - d;
      if (over < least) least = over;
      if (over > most) most = over;
    }
    if (least > 0) return null;
    if (most > 0) {
      cutting[cuts++] = ny;
      cutting[cuts++] = nz;
      cutting[cuts++] = d;
    }
  }
  let low = Infinity;
  let high = -Infinity;
  for (const face of faces) {
    let left = 0;
    for (const i of face) {
      const p = corners[i]!;
      ring[left++] = p[0];
      ring[left++] = p[1];
      ring[left++] = p[2];
    }
    for (let k = 0; k < cuts && left > 0; k += 3) {
      const ny = cutting[k]!;
      const nz = cutting[k + 1]!;
      const d = cutting[k + 2]!;
      let kept = 0;
      let px = ring[left - 3]!;
      let py = ring[left - 2]!;
      let pz = ring[left - 1]!;
      let dp = ny * py + nz * pz - d;
      for (let i = 0; i < left; i += 3) {
        const qx = ring[i]!;
        const qy = ring[i + 1]!;
        const qz = ring[i + 2]!;
        const dq = ny * qy + nz * qz - d;
        if (dp <= 0 !== dq <= 0) {
          const s = dp / (dp - dq);
          next[kept++] = px + (qx - px) * s;
          next[kept++] = py + (qy - py) * s;
          next[kept++] = pz + (qz - pz) * s;
        }
        if (dq <= 0) {
          next[kept++] = qx;
          next[kept++] = qy;
          next[kept++] = qz;
        }
        px = qx;
        py = qy;
        pz = qz;
        dp = dq;
      }
      const used = ring;
      ring = next;
      next = used;
      left = kept;
    }
    for (let i = 0; i < left; i += 3) {
      if (ring[i]! < low) low = ring[i]!;
      if (ring[i]! > high) high = ring[i]!;
    }
  }
  return low <= high ? [low, high] : null;
};

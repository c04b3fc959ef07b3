import type { Vec2, Vec3 } from '../geometry/index.js';
import type { Body } from './body.js';

/** mm: ends of cut lines closer than this are one corner. */
const ONE_CORNER = 1e-3;

/** Where the plane at `along` cuts a face: pieces of line in (back, up). */
const cutFace = (loops: readonly (readonly Vec3[])[], along: number): [Vec2, Vec2][] => {
  const crossings: Vec2[] = [];
  for (const loop of loops) {
    loop.forEach((p, i) => {
      const q = loop[(i + 1) % loop.length]!;
      if (p[0] > along === q[0] > along) return;
      const s = (along - p[0]) / (q[0] - p[0]);
      crossings.push([p[1] + (q[1] - p[1]) * s, p[2] + (q[2] - p[2]) * s]);
    });
  }
  crossings.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const pieces: [Vec2, Vec2][] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) pieces.push([crossings[i]!, crossings[i + 1]!]);
  return pieces;
};

/**
 * The cross-section of a closed body by the plane square to the bed at `along`, as rings in (back, up). The plane must
 * not hold a corner: choose an odd place.
 */
export const sectionOf = (body: Body, along: number): Vec2[][] => {
  const pieces = body.faces.flatMap((face) => cutFace(face.loops, along));
  const left = new Set(pieces.filter(([p, q]) => Math.hypot(p[0] - q[0], p[1] - q[1]) > ONE_CORNER / 10));
  const near = (p: Vec2, q: Vec2): boolean => Math.hypot(p[0] - q[0], p[1] - q[1]) < ONE_CORNER;
  const rings: Vec2[][] = [];
  for (const start of left) {
    left.delete(start);
    const ring: Vec2[] = [start[0], start[1]];
    for (let grown = true; grown && !near(ring[0]!, ring[ring.length - 1]!); ) {
      grown = false;
      for (const piece of left) {
        const end = ring[ring.length - 1]!;
        const next = near(piece[0], end) ? piece[1] : near(piece[1], end) ? piece[0] : null;
        if (!next) continue;
        left.delete(piece);
        ring.push(next);
        grown = true;
        break;
      }
    }
    if (near(ring[0]!, ring[ring.length - 1]!)) ring.pop();
    if (ring.length >= 3) rings.push(ring);
  }
  return rings;
};

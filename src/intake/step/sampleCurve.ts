import { type Vec3, add3, dot3, length3, scale3, sub3 } from '../../geometry/index.js';
import { CURVE_CHORD, MOST_HALVINGS } from '../tolerances.js';

const distanceToSegment = (p: Vec3, a: Vec3, b: Vec3): number => {
  const [chord, reach] = [sub3(b, a), sub3(p, a)];
  const square = dot3(chord, chord);
  const s = square === 0 ? 0 : Math.min(1, Math.max(0, dot3(reach, chord) / square));
  return length3(sub3(p, add3(a, scale3(chord, s))));
};

/** A curve cut into chords by halving until the middle and the quarters of each piece lie on their chord. */
export const sampleCurve = (at: (u: number) => Vec3, first: number, last: number, pieces: number): Vec3[] => {
  const points: Vec3[] = [at(first)];
  const halve = (u0: number, p0: Vec3, u1: number, p1: Vec3, depth: number): void => {
    const inner = [0.25, 0.5, 0.75].map((s) => at(u0 + (u1 - u0) * s)) as [Vec3, Vec3, Vec3];
    if (depth === 0 || inner.every((p) => distanceToSegment(p, p0, p1) < CURVE_CHORD / 2)) {
      points.push(p1);
      return;
    }
    const um = (u0 + u1) / 2;
    halve(u0, p0, um, inner[1], depth - 1);
    halve(um, inner[1], u1, p1, depth - 1);
  };
  let [u, p] = [first, points[0]!];
  for (let k = 1; k <= pieces; k++) {
    const next = first + ((last - first) * k) / pieces;
    const q = at(next);
    halve(u, p, next, q, MOST_HALVINGS);
    [u, p] = [next, q];
  }
  return points;
};

import { type Contour, type Vec2, type Vec3, signedArea } from '../geometry/index.js';
import { type Body, type Face, type Mark, bodyOf } from './body.js';
import { flatRing } from './flatRing.js';
import type { FillName } from './pens.js';

/** mm by which a tool's rounding may leave its chords in a picture. */
const CHORD = 0.05;

/** A cross-section in (back, up) as a body from `low` to `high` along the bed. Machine frame (along, back, up). */
export const extrude = (
  name: string,
  profile: Contour,
  low: number,
  high: number,
  fill: FillName,
  marks: readonly Mark[] = [],
): Body => {
  const ring = flatRing(profile, CHORD);
  const clockwise = signedArea(profile) < 0;
  const points = clockwise ? [...ring.points].reverse() : ring.points;
  const n = points.length;
  // piece i of the reversed ring is piece n-2-i of the ring as it was
  const arc = clockwise ? points.map((_, i) => ring.arc[(2 * n - 2 - i) % n]!) : ring.arc;
  const at = (along: number, p: Vec2): Vec3 => [along, p[0], p[1]];
  const faces: Face[] = [
    { loops: [points.map((p) => at(high, p))], normal: [1, 0, 0], surface: 'right end', curved: false, fill },
    { loops: [[...points].reverse().map((p) => at(low, p))], normal: [-1, 0, 0], surface: 'left end', curved: false, fill },
  ];
  points.forEach((p, i) => {
    const q = points[(i + 1) % n]!;
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (length === 0) return;
    faces.push({
      loops: [[at(low, p), at(low, q), at(high, q), at(high, p)]],
      normal: [0, (q[1] - p[1]) / length, -(q[0] - p[0]) / length],
      surface: arc[i] === -1 ? `side ${i}` : `arc ${arc[i]}`,
      curved: arc[i] !== -1,
      fill,
    });
  });
  return bodyOf(name, faces, false, marks);
};

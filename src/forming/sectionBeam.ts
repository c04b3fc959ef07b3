import { type Contour, flatten } from '../geometry/index.js';
import type { Beam } from './beam.js';

/** mm that an arc of a section is cut to chords by: it changes the second moment by less than a millionth. */
const CHORD = 0.01;
/** Steel, MPa; and the shear coefficient of a rectangle, from which plates on edge with a head differ by little. */
const STEEL = { modulus: 210000, poisson: 0.3, shearCoefficient: 5 / 6 } as const;

/**
 * A bed-long cross-section in (back, up) as a steel beam that bends up and down over `span` mm. Several contours are one
 * section, joined stiffly. The same section is taken over the whole length: holes and side plates are not in the data.
 */
export const sectionBeam = (contours: readonly Contour[], span: number): Beam => {
  let [area, first, second] = [0, 0, 0];
  for (const contour of contours) {
    const points = flatten(contour, CHORD);
    points.forEach(([x, y], i) => {
      const [u, v] = points[(i + 1) % points.length]!;
      // Green's theorem over each edge: area, its first and second moment about up = 0
      const cross = x * v - u * y;
      area += cross / 2;
      first += (cross * (y + v)) / 6;
      second += (cross * (y * y + y * v + v * v)) / 12;
    });
  }
  return { span, area, inertia: second - (first * first) / area, ...STEEL };
};

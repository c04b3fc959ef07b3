import type { Rigid } from '../geometry/index.js';
import type { Developed } from './developed.js';
import type { Bend } from './part.js';

const RADIANS = Math.PI / 180;

/** sin x / x, 1 at 0. */
const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(x) / x);

/** +1 for a bend towards the A side, -1 towards B. */
export const signOf = (bend: Bend): 1 | -1 => (bend.direction === 'A' ? 1 : -1);

/**
 * The inside radius (mm) of bend `bend` turned through `angle` degrees (> 0): the flat length is kept, so it is
 * wide at first and tightens. docs/kinematics.md, "A bend part-way".
 */
export const insideRadiusAt = (sheet: Developed, bend: number, angle: number): number => {
  const { bendAngle, insideRadius } = sheet.part.bends[bend]!;
  const allowance = sheet.allowances[bend]!;
  return allowance / (angle * RADIANS) - (allowance / (bendAngle * RADIANS) - insideRadius);
};

/**
 * The frame reached by walking the share `f` (0 to 1) of the arc of bend `bend` turned through `angle` degrees, in the
 * bend's frame at side 0: origin on the middle surface at u = 0, x = u, y = tangent from side 0 to side 1, z out of
 * the A side. No division by the angle, so 0 is the flat strip.
 */
export const alongArc = (sheet: Developed, bend: number, angle: number, f: number): Rigid => {
  const { part, allowances } = sheet;
  const it = part.bends[bend]!;
  const allowance = allowances[bend]!;
  const s = signOf(it);
  // the middle surface's radius is allowance / x + shift
  const shift = it.insideRadius + part.thickness / 2 - allowance / (it.bendAngle * RADIANS);
  const turned = angle * RADIANS * f;
  const half = turned / 2;
  const sin = Math.sin(turned);
  const cos = Math.cos(turned);
  const rise = 2 * Math.sin(half) ** 2; // 1 - cos, exact near 0
  return {
    x: [1, 0, 0],
    y: [0, cos, s * sin],
    z: [0, -s * sin, cos],
    o: [0, allowance * f * sinc(turned) + shift * sin, s * (allowance * f * sinc(half) * Math.sin(half) + shift * rise)],
  };
};

import { type Rigid, compose } from '../geometry/index.js';
import type { Developed } from './developed.js';
import type { Bend } from './part.js';

const RADIANS = Math.PI / 180;

/** sin x / x, 1 at 0. */
const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(x) / x);

/** +1 for a bend towards the A side, -1 towards B. */
export const signOf = (bend: Bend): 1 | -1 => (bend.direction === 'A' ? 1 : -1);

/** A stretch of a bend's arc of one curvature: flat length (mm), turn (radians), and middle radius less length / turn (mm). */
export interface ArcRun {
  readonly length: number;
  readonly turned: number;
  readonly shift: number;
}

/**
 * The arc of bend `bend` turned through `angle` degrees as runs of one curvature, from side 0 to side 1: one for a bend;
 * for a hem as made a middle one and, where pre-bend and closed arc take up unlike lengths, one on either side of it.
 */
export const arcRuns = (sheet: Developed, bend: number, angle: number): readonly ArcRun[] => {
  const { part, allowances } = sheet;
  const it = part.bends[bend]!;
  const allowance = allowances[bend]!;
  const x = angle * RADIANS;
  const final = it.bendAngle * RADIANS;
  const { hem } = it;
  if (!hem) return [{ length: allowance, turned: x, shift: it.insideRadius + part.thickness / 2 - allowance / final }];
  const { preLength, closedLength } = hem;
  const [pre, load] = [hem.preBendAngle * RADIANS, hem.preBendAngleUnderLoad * RADIANS];
  const middle = Math.min(preLength, closedLength);
  const beside = (allowance - middle) / 2;
  const share = Math.max(0, (x - load) / (final - load));
  const mix = (a: number, b: number): number => a + (b - a) * share;
  const shift = mix(hem.preInsideRadius - preLength / pre, it.insideRadius - closedLength / final) + part.thickness / 2;
  const outer = mix(preLength > middle ? (Math.min(x, load) * beside) / preLength : 0, closedLength > middle ? (final * beside) / closedLength : 0);
  const side: ArcRun = { length: beside, turned: outer, shift };
  return beside > 0 ? [side, { length: middle, turned: x - 2 * outer, shift }, side] : [{ length: middle, turned: x, shift }];
};

/**
 * The inside radius (mm) of bend `bend` turned through `angle` degrees (> 0): the flat length is kept, so it is
 * wide at first and tightens. Of a hem, in its middle. docs/kinematics.md, "A bend part-way".
 */
export const insideRadiusAt = (sheet: Developed, bend: number, angle: number): number => {
  const runs = arcRuns(sheet, bend, angle);
  const { length, turned, shift } = runs[(runs.length - 1) / 2]!;
  return length / turned + shift - sheet.part.thickness / 2;
};

/** The share of one run, as a frame: no division by the angle, so 0 is the flat strip. */
const alongRun = ({ length, turned, shift }: ArcRun, f: number, s: 1 | -1): Rigid => {
  const here = turned * f;
  const half = here / 2;
  const sin = Math.sin(here);
  const cos = Math.cos(here);
  const rise = 2 * Math.sin(half) ** 2; // 1 - cos, exact near 0
  return {
    x: [1, 0, 0],
    y: [0, cos, s * sin],
    z: [0, -s * sin, cos],
    o: [0, length * f * sinc(here) + shift * sin, s * (length * f * sinc(half) * Math.sin(half) + shift * rise)],
  };
};

/**
 * The frame reached by walking the share `f` (0 to 1) of the arc of bend `bend` turned through `angle` degrees, in the
 * bend's frame at side 0: origin on the middle surface at u = 0, x = u, y = tangent from side 0 to side 1, z out of
 * the A side.
 */
export const alongArc = (sheet: Developed, bend: number, angle: number, f: number): Rigid => {
  const s = signOf(sheet.part.bends[bend]!);
  const runs = arcRuns(sheet, bend, angle);
  const [first] = runs;
  if (runs.length === 1) return alongRun(first!, f, s);
  let left = f * sheet.allowances[bend]!;
  let frame: Rigid | null = null;
  for (const run of runs) {
    const part = alongRun(run, run.length > 0 ? Math.min(1, left / run.length) : 0, s);
    frame = frame ? compose(frame, part) : part;
    left -= run.length;
    if (left <= 0) break;
  }
  return frame!;
};

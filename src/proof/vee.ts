import type { Rigid, Vec3 } from '../geometry/index.js';
import type { Bend } from '../sheet/index.js';
import type { Die } from '../shop/index.js';
import type { Step } from '../trial/index.js';
import { type BendShape, besideArc, insideAt, middleAt, sideFrame, versine } from './bendShape.js';
import { compose, invert } from '../geometry/index.js';

const RADIANS = Math.PI / 180;

/** A die as the sheet meets it (docs/kinematics.md, 'In a V'). mm */
export interface Vee {
  /** Half opening, to where the shoulder arcs meet the flat top. */
  readonly c: number;
  readonly shoulder: number;
  readonly top: number;
}

export const veeOf = (die: Die, top: number): Vee => {
  const beyondSharp = die.shoulderRadius * Math.tan((45 - die.includedAngle / 4) * RADIANS);
  return { c: die.v / 2 + (die.vConvention === 'sharp' ? beyondSharp : 0), shoulder: die.shoulderRadius, top };
};

/** mm from first touch to the inner apex at the bend angle x (radians). */
export const depthAt = (vee: Vee, shape: BendShape, x: number): number => {
  if (x === 0) return 0;
  const b = x / 2;
  return vee.c * Math.tan(b) - ((insideAt(shape, x) + shape.thickness + vee.shoulder) * versine(b)) / Math.cos(b);
};

/** up of the inner apex, where the punch tip stands, at the bend angle x (radians). */
export const apexAt = (vee: Vee, shape: BendShape, x: number): number => vee.top + shape.thickness - depthAt(vee, shape, x);

/** Where the gauge side's wing begins, in the middle plane: (back, up) in the machine. */
export const wingStart = (vee: Vee, shape: BendShape, x: number): readonly [number, number] => {
  if (x === 0) return [shape.a / 2, vee.top + shape.thickness / 2];
  const b = x / 2;
  const half = shape.thickness / 2;
  return [
    middleAt(shape, x) * Math.sin(b) + besideArc(shape) * Math.cos(b),
    apexAt(vee, shape, x) + insideAt(shape, x) * versine(b) - half * Math.cos(b) + besideArc(shape) * Math.sin(b),
  ];
};

/** +1 where the bend's u runs to +along, -1 where it runs to -along. */
export const sense = (bend: Bend, gaugeSide: 0 | 1): 1 | -1 => ((bend.direction === 'A') === (gaugeSide === 1) ? 1 : -1);

/** The gauge side plate's frame in the machine (along, back, up) at the bend angle x (radians) of the running bend. */
export const gaugePose = (vee: Vee, bend: Bend, shape: BendShape, step: Step, x: number): Rigid => {
  const g = step.gaugeSide;
  const [c, s] = [Math.cos(x / 2), Math.sin(x / 2)];
  const [back, up] = wingStart(vee, shape, x);
  // from the bend into the wing, and out of its inside face
  const outward: Vec3 = [0, c, s];
  const inward: Vec3 = [0, -s, c];
  const flip = (v: Vec3, sign: 1 | -1): Vec3 => [v[0] * sign, v[1] * sign, v[2] * sign];
  const atLine: Rigid = {
    x: [sense(bend, g), 0, 0],
    y: flip(outward, g === 1 ? 1 : -1),
    z: flip(inward, bend.direction === 'A' ? 1 : -1),
    o: [step.place, back, up],
  };
  return compose(atLine, invert(sideFrame(bend.sides[g].line)));
};

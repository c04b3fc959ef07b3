import { type Rigid, type Vec3, compose, invert } from '../geometry/index.js';
import type { Bend, Developed, Line } from '../sheet/index.js';

const RADIANS = Math.PI / 180;

/** What a bend's arc depends on. Angles in radians, lengths in mm (docs/kinematics.md, 'A bend part-way'). */
export interface BendShape {
  /** Flat length. */
  readonly a: number;
  /** Neutral line's distance from the inside face. */
  readonly neutral: number;
  readonly thickness: number;
  /** +1 turns towards A, -1 towards B. */
  readonly s: 1 | -1;
  /** Final bend angle. */
  readonly final: number;
}

export const shapeOf = (sheet: Developed, index: number): BendShape => {
  const bend = sheet.part.bends[index]!;
  const a = sheet.allowances[index]!;
  const final = bend.bendAngle * RADIANS;
  return {
    a,
    neutral: a / final - bend.insideRadius,
    thickness: sheet.part.thickness,
    s: bend.direction === 'A' ? 1 : -1,
    final,
  };
};

/** Inside radius at the bend angle x > 0 (radians). mm */
export const insideAt = (shape: BendShape, x: number): number => shape.a / x - shape.neutral;

/** Radius of the middle plane at the bend angle x > 0 (radians). mm */
export const middleAt = (shape: BendShape, x: number): number => insideAt(shape, x) + shape.thickness / 2;

/** 1 - cos x without cancellation. */
export const versine = (x: number): number => 2 * Math.sin(x / 2) ** 2;

/** The frame of a bend at one side: origin line.from, x along the line, y its left normal, z out of the A side. */
export const sideFrame = (line: Line): Rigid => {
  const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]];
  const length = Math.hypot(dx, dy);
  const [ux, uy] = [dx / length, dy / length];
  return { x: [ux, uy, 0], y: [-uy, ux, 0], z: [0, 0, 1], o: [line.from[0], line.from[1], 0] };
};

/** Side 1's frame in side 0's at the bend angle x (radians). */
const elbow = (shape: BendShape, x: number): Rigid => {
  if (x === 0) return { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1], o: [0, shape.a, 0] };
  const middle = middleAt(shape, x);
  const [c, s] = [Math.cos(x), shape.s * Math.sin(x)];
  return {
    x: [1, 0, 0],
    y: [0, c, s],
    z: [0, -s, c],
    o: [0, middle * Math.sin(x), shape.s * middle * versine(x)],
  };
};

/** Plate 1's frame in plate 0's at the bend angle x (radians). */
export const acrossBend = (bend: Bend, shape: BendShape, x: number): Rigid =>
  compose(compose(sideFrame(bend.sides[0].line), elbow(shape, x)), invert(sideFrame(bend.sides[1].line)));

/** A point of the curved metal in the frame of side 0: u along the line, f the share of the arc, z out of the A face. */
export const zonePoint = (shape: BendShape, x: number, u: number, f: number, z: number): Vec3 => {
  if (x === 0) return [u, shape.a * f, z];
  const turned = x * f;
  const radius = middleAt(shape, x) - shape.s * z;
  return [u, radius * Math.sin(turned), z + shape.s * radius * versine(turned)];
};

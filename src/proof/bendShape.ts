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
  /** Of a hem as tools make it (docs/kinematics.md, 'A hem'); then `a` is the zone's length and `neutral` the pre-bend's. */
  readonly hem?: {
    /** Flat lengths curved by the pre-bend and when closed, the bend angle under load of the pre-bend, and the closed neutral line. */
    readonly pre: number;
    readonly closed: number;
    readonly load: number;
    readonly neutralClosed: number;
  };
}

export const shapeOf = (sheet: Developed, index: number): BendShape => {
  const bend = sheet.part.bends[index]!;
  const a = sheet.allowances[index]!;
  const final = bend.bendAngle * RADIANS;
  const { hem } = bend;
  return {
    a,
    neutral: hem ? hem.preLength / (hem.preBendAngle * RADIANS) - hem.preInsideRadius : a / final - bend.insideRadius,
    ...(hem && {
      hem: {
        pre: hem.preLength,
        closed: hem.closedLength,
        load: hem.preBendAngleUnderLoad * RADIANS,
        neutralClosed: hem.closedLength / final - bend.insideRadius,
      },
    }),
    thickness: sheet.part.thickness,
    s: bend.direction === 'A' ? 1 : -1,
    final,
  };
};

/** Inside radius at the bend angle x > 0 (radians), of a hem while it is pre-bent. mm */
export const insideAt = (shape: BendShape, x: number): number => (shape.hem?.pre ?? shape.a) / x - shape.neutral;

/** Flat metal of the zone on either side of the arc, of a hem while it is pre-bent. mm */
export const besideArc = (shape: BendShape): number => (shape.a - (shape.hem?.pre ?? shape.a)) / 2;

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

/**
 * A hem's middle plane at the flat length l from side 0: (v, w) with w towards the inside, and the angle turned there. The
 * direction is laid out along the length piece by piece: a middle of one curvature between two of another.
 */
const alongHem = (shape: BendShape, x: number, l: number): { readonly v: number; readonly w: number; readonly angle: number } => {
  const { pre, closed, load, neutralClosed } = shape.hem!;
  const middle = Math.min(pre, closed);
  const end = (shape.a - middle) / 2;
  const done = x <= load ? 0 : (x - load) / (shape.final - load);
  const uniform = Math.min(x, load);
  const endTurn = (1 - done) * (pre > middle ? (uniform * end) / pre : 0) + done * (closed > middle ? (shape.final * end) / closed : 0);
  const off = shape.thickness / 2 - (1 - done) * shape.neutral - done * neutralClosed;
  let [v, w, angle] = [0, 0, 0];
  for (const [from, length, turn] of [[0, end, endTurn], [end, middle, x - 2 * endTurn], [end + middle, end, endTurn]] as const) {
    if (l <= from || length <= 0) continue;
    const share = Math.min(1, (l - from) / length);
    if (turn < 1e-12) {
      v += share * length * Math.cos(angle);
      w += share * length * Math.sin(angle);
      continue;
    }
    const radius = length / turn + off;
    const next = angle + share * turn;
    v += radius * (Math.sin(next) - Math.sin(angle));
    w += radius * (Math.cos(angle) - Math.cos(next));
    angle = next;
  }
  return { v, w, angle };
};

/** Side 1's frame in side 0's at the bend angle x (radians). */
export const elbow = (shape: BendShape, x: number): Rigid => {
  if (x === 0) return { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1], o: [0, shape.a, 0] };
  if (shape.hem !== undefined) {
    const { v, w, angle } = alongHem(shape, x, shape.a);
    const [ch, sh] = [Math.cos(angle), shape.s * Math.sin(angle)];
    return { x: [1, 0, 0], y: [0, ch, sh], z: [0, -sh, ch], o: [0, v, shape.s * w] };
  }
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
  if (shape.hem !== undefined) {
    const { v, w, angle } = alongHem(shape, x, shape.a * f);
    return [u, v - shape.s * z * Math.sin(angle), shape.s * w + z * Math.cos(angle)];
  }
  const turned = x * f;
  const radius = middleAt(shape, x) - shape.s * z;
  return [u, radius * Math.sin(turned), z + shape.s * radius * versine(turned)];
};

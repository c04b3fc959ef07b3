import { type Rigid, type Vec3, apply, compose, invert } from '../geometry/index.js';
import type { Bend } from '../sheet/index.js';
import type { Punch } from '../shop/index.js';
import type { Step } from '../trial/index.js';
import { type BendShape, acrossBend, elbow, sideFrame, zonePoint } from './bendShape.js';
import type { BendTravel } from './bendTravel.js';
import { cornersOf } from './box.js';
import type { Element, Wing } from './element.js';
import { sense } from './vee.js';

const RADIANS = Math.PI / 180;

/** The plate that lies on the anvil (front) and the hem's flange (gauge) at the bend angle x (radians): docs/kinematics.md, 'Closing a hem'. */
export const closingRoot = (bend: Bend, shape: BendShape, step: Step, anvilTop: number): ((wing: Wing, x: number) => Rigid) => {
  const g = step.gaugeSide;
  const lying: Rigid = compose(
    {
      x: [sense(bend, g), 0, 0],
      y: [0, g === 1 ? 1 : -1, 0],
      z: [0, 0, bend.direction === 'A' ? 1 : -1],
      o: [step.place, step.lineBack ?? 0, anvilTop + shape.thickness / 2],
    },
    invert(sideFrame(bend.sides[g === 1 ? 0 : 1].line)),
  );
  return (wing, x) => {
    if (wing === 'front') return lying;
    const across = acrossBend(bend, shape, x);
    return compose(lying, g === 1 ? across : invert(across));
  };
};

/** mm from the bending plane to the end of a flattening punch's face, on its narrower side. */
export const faceHalf = (punch: Punch): number => {
  const xs = punch.profile.filter((v) => v.y < 1e-3).map((v) => v.x);
  return Math.min(Math.max(...xs), -Math.min(...xs));
};

/**
 * up of the punch's face at x: on the outer edge of the flange, or, where that lies in front of the face, on what lies under
 * the face's front edge. `reach`: mm from the flange's line to its furthest metal.
 */
export const closingTip = (bend: Bend, shape: BendShape, step: Step, face: number, reach: number, root: Rigid): number => {
  const g = step.gaugeSide;
  const frame = compose(root, sideFrame(bend.sides[g].line));
  const outer = (l: number): Vec3 => apply(frame, [0, g === 1 ? l : -l, (bend.direction === 'A' ? -1 : 1) * (shape.thickness / 2)]);
  const [foot, end] = [outer(0), outer(reach)];
  if (end[1] >= -face) return end[2];
  if (foot[1] <= -face) return foot[2];
  return foot[2] + ((end[2] - foot[2]) * (foot[1] + face)) / (foot[1] - end[1]);
};

/** Degrees between two entries of the tables, and places along the arc that are followed. */
const GRID = 0.1;
const PLACES = 16;
/** Between the places followed, and between entries, a smooth arc's points move no further by more than this share. */
const BETWEEN = 1.05;

/** How far metal moves while a hem is closed: the lying plate not at all, the flange as its line and about it, the arc as its points do. */
export const closingTravel = (
  bend: Bend, shape: BendShape, gaugeSide: 0 | 1, from: number, to: number, tip: (x: number) => number,
): BendTravel => {
  const count = Math.max(2, Math.ceil((to - from) / (GRID * RADIANS)) + 1);
  const at = (k: number): number => from + ((to - from) * k) / (count - 1);
  const table = (step: (x0: number, x1: number) => number): ((x0: number, x1: number) => number) => {
    const sums = [0];
    for (let k = 1; k < count; k++) sums.push(sums[k - 1]! + step(at(k - 1), at(k)));
    const value = (x: number): number => {
      const place = ((x - from) / (to - from)) * (count - 1);
      const k = Math.min(count - 2, Math.max(0, Math.floor(place)));
      return sums[k]! + (sums[k + 1]! - sums[k]!) * (place - k);
    };
    return (x0, x1) => Math.abs(value(x1) - value(x0)) * BETWEEN;
  };
  const apart = (p: Vec3, q: Vec3): number => Math.hypot(p[1] - q[1], p[2] - q[2]);
  const line = table((x0, x1) => apart(elbow(shape, x0).o, elbow(shape, x1).o));
  // the arc is walked from the lying plate's side: its points as seen from there
  const seen = (x: number, f: number, z: number): Vec3 => {
    const p = zonePoint(shape, x, 0, f, z);
    return gaugeSide === 1 ? p : apply(invert(elbow(shape, x)), p);
  };
  const arc = table((x0, x1) =>
    Math.max(...Array.from({ length: PLACES + 1 }, (_, k) => k / PLACES).flatMap((f) =>
      [1, -1].map((side) => apart(seen(x0, f, (side * shape.thickness) / 2), seen(x1, f, (side * shape.thickness) / 2))))));
  const ram = table((x0, x1) => Math.abs(tip(x1) - tip(x0)));
  const toLine: Record<Wing, Rigid> = {
    gauge: invert(sideFrame(bend.sides[gaugeSide].line)),
    front: invert(sideFrame(bend.sides[gaugeSide === 0 ? 1 : 0].line)),
  };
  const lever = (e: Element): number =>
    Math.max(...cornersOf(e.box(0, 0)).map((p) => apply(toLine[e.wing], apply(e.rel, p))).map((p) => Math.hypot(p[1], p[2])));
  const fromWing = (e: Element, x0: number, x1: number): number => (e.running ? arc(x0, x1) : line(x0, x1) + lever(e) * Math.abs(x1 - x0));
  const fromBed = (e: Element, x0: number, x1: number): number => (!e.running && e.wing === 'front' ? 0 : fromWing(e, x0, x1));
  return { fromWing, fromBed, fromPunch: (e, x0, x1) => fromBed(e, x0, x1) + ram(x0, x1) };
};

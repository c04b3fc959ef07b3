import { type Rigid, apply, invert } from '../geometry/index.js';
import type { Bend } from '../sheet/index.js';
import { type BendShape, elbow, sideFrame } from './bendShape.js';
import { cornersOf } from './box.js';
import type { Element } from './element.js';
import { type Vee, apexAt, wingStart } from './vee.js';

const RADIANS = Math.PI / 180;

/** Degrees between two entries of the tables of path lengths. */
const GRID = 0.1;

/** Paths are smooth: chords of a tenth of a degree fall short of them by far less than this share. */
const CHORDS = 1.001;

export interface BendTravel {
  /** Bounds in mm on how far any point of the element moves while the running angle goes from x0 to x1 (radians). */
  fromBed(element: Element, x0: number, x1: number): number;
  fromPunch(element: Element, x0: number, x1: number): number;
  /** Seen from a wing's root: a point of the other wing, or of a running zone. */
  fromWing(element: Element, x0: number, x1: number): number;
}

/**
 * A wing moves as the path of its first line plus half the bend angle about that line; seen from the other wing, the
 * whole bend angle. A running zone: its point at the length l from where the arc is held has the velocity, for each
 * radian, of at most |d| l/a + (1 + |d|/R) l^2/2a + (t/2) l/a with d the middle plane's distance from the neutral line
 * (at most t/2) and R the neutral radius; with l = a/2 (from the apex) that stays below a/4 + t, with l = a below a/2 + 2t.
 */
export const bendTravel = (
  vee: Vee,
  shape: BendShape,
  bend: Bend,
  gaugeSide: 0 | 1,
  from: number,
  to: number,
): BendTravel => {
  const count = Math.max(2, Math.ceil(Math.abs(to - from) / (GRID * RADIANS)) + 1);
  const places = Array.from({ length: count }, (_, k) => {
    const x = from + ((to - from) * k) / (count - 1);
    const wing = wingStart(vee, shape, x);
    const apex = apexAt(vee, shape, x);
    const { o } = elbow(shape, x);
    return {
      bed: wing,
      punch: [wing[0], wing[1] - apex] as const,
      wing: [o[1], o[2]] as const,
      apex: [0, apex] as const,
    };
  });
  const table = (pick: (p: (typeof places)[number]) => readonly [number, number]): ((x0: number, x1: number) => number) => {
    const sums = [0];
    for (let k = 1; k < count; k++) {
      const [p, q] = [pick(places[k - 1]!), pick(places[k]!)];
      sums.push(sums[k - 1]! + Math.hypot(q[0] - p[0], q[1] - p[1]));
    }
    const at = (x: number): number => {
      const place = from === to ? 0 : ((x - from) / (to - from)) * (count - 1);
      const k = Math.min(count - 2, Math.max(0, Math.floor(place)));
      return sums[k]! + (sums[k + 1]! - sums[k]!) * (place - k);
    };
    return (x0, x1) => Math.abs(at(x1) - at(x0)) * CHORDS;
  };
  const paths = { bed: table((p) => p.bed), punch: table((p) => p.punch), wing: table((p) => p.wing), apex: table((p) => p.apex) };

  const levers = new Map<Element, number>();
  const toLine: Record<Element['wing'], Rigid> = {
    gauge: invert(sideFrame(bend.sides[gaugeSide].line)),
    front: invert(sideFrame(bend.sides[gaugeSide === 0 ? 1 : 0].line)),
  };
  const lever = (element: Element): number => {
    const known = levers.get(element);
    if (known !== undefined) return known;
    const corners = cornersOf(element.box(0, 0)).map((p) => apply(toLine[element.wing], apply(element.rel, p)));
    const found = Math.max(...corners.map((p) => Math.hypot(p[1], p[2])));
    levers.set(element, found);
    return found;
  };
  const { a, thickness: t } = shape;
  return {
    fromBed: (e, x0, x1) =>
      e.running
        ? paths.apex(x0, x1) + (a / 4 + t) * Math.abs(x1 - x0)
        : paths.bed(x0, x1) + (lever(e) * Math.abs(x1 - x0)) / 2,
    fromPunch: (e, x0, x1) =>
      e.running ? (a / 4 + t) * Math.abs(x1 - x0) : paths.punch(x0, x1) + (lever(e) * Math.abs(x1 - x0)) / 2,
    fromWing: (e, x0, x1) =>
      e.running ? (a / 2 + 2 * t) * Math.abs(x1 - x0) : paths.wing(x0, x1) + lever(e) * Math.abs(x1 - x0),
  };
};


import { type Contour, type Vec2, cross2, dot2, flatten, length2, signedArea, sub2 } from '../geometry/index.js';
import type { Bend, Formed, Part, Plate, Side } from './part.js';
import { neighboursOf } from './tree.js';

/** mm, and mm2 for each mm2: what the placement of a body in a file moves its corners by, far below what is ever measured. */
const NEAR = 0.01;
const NEAR_SHARE = 1e-4;
/** Degrees. */
const NEAR_ANGLE = 0.01;
const CHORD = 0.01;

/** One plate's frame laid on another's: turned over first (y to -y) or not, then turned and moved. */
interface Laid {
  readonly over: boolean;
  readonly c: number;
  readonly s: number;
  readonly x: number;
  readonly y: number;
}

const place = ({ over, c, s, x, y }: Laid, [px, py]: Vec2): Vec2 => {
  const q = over ? -py : py;
  return [c * px - s * q + x, s * px + c * q + y];
};

const near = (a: number, b: number): boolean => Math.abs(a - b) <= NEAR;
const nearPoint = (p: Vec2, q: Vec2): boolean => near(p[0], q[0]) && near(p[1], q[1]);
const alike = (a: number, b: number): boolean => Math.abs(a - b) <= NEAR + NEAR_SHARE * Math.abs(a);

/** The motion that takes one stretch onto another of the same length; null where they are none. */
const laid = (from: readonly [Vec2, Vec2], onto: readonly [Vec2, Vec2], over: boolean): Laid | null => {
  const flip = ([x, y]: Vec2): Vec2 => [x, over ? -y : y];
  const [a, b] = [flip(from[0]), flip(from[1])];
  const [u, v] = [sub2(b, a), sub2(onto[1], onto[0])];
  const [one, other] = [length2(u), length2(v)];
  if (!near(one, other) || one < NEAR) return null;
  const [c, s] = [dot2(u, v) / (one * other), cross2(u, v) / (one * other)];
  return { over, c, s, x: onto[0][0] - (c * a[0] - s * a[1]), y: onto[0][1] - (s * a[0] + c * a[1]) };
};

/** Every member of one list has a partner of its own in the other, and none is left over. */
const paired = <T>(one: readonly T[], other: readonly T[], same: (a: T, b: T) => boolean): boolean => {
  if (one.length !== other.length) return false;
  const left = [...other];
  return one.every((a) => {
    const k = left.findIndex((b) => same(a, b));
    if (k < 0) return false;
    left.splice(k, 1);
    return true;
  });
};

const pointOf = ({ x, y }: Contour[number]): Vec2 => [x, y];

/** Where a contour's area lies, how much it is, and how far it spreads about that point (mm4): what a circle's seam does not change. */
const massOf = (contour: Contour): { readonly at: Vec2; readonly area: number; readonly spread: number } => {
  const ring = flatten(contour, CHORD);
  let [twice, x, y, spread] = [0, 0, 0, 0];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const w = p[0] * q[1] - p[1] * q[0];
    twice += w;
    x += ((p[0] + q[0]) * w) / 3;
    y += ((p[1] + q[1]) * w) / 3;
    spread += ((p[0] * p[0] + p[0] * q[0] + q[0] * q[0] + p[1] * p[1] + p[1] * q[1] + q[1] * q[1]) * w) / 12;
  });
  const at: Vec2 = twice === 0 ? [ring[0]![0], ring[0]![1]] : [x / twice, y / twice];
  return { at, area: Math.abs(twice / 2), spread: Math.abs(spread - (twice / 2) * (at[0] * at[0] + at[1] * at[1])) };
};

const sameCut = (motion: Laid) => (one: Contour, other: Contour): boolean => {
  const [a, b] = [massOf(one), massOf(other)];
  return nearPoint(place(motion, a.at), b.at) && alike(a.area, b.area) && Math.abs(a.spread - b.spread) <= 0.01 + 1e-3 * a.spread;
};

const samePlate = (one: Plate, other: Plate, motion: Laid): boolean =>
  alike(signedArea(one.outline), signedArea(other.outline)) &&
  paired(one.outline.map(pointOf), other.outline.map(pointOf), (p, q) => nearPoint(place(motion, p), q)) &&
  paired(one.holes, other.holes, sameCut(motion));

const turnedOver = (side: Side, over: boolean): Side => (over ? (side === 'A' ? 'B' : 'A') : side);
const zoneArea = ({ zone }: Bend): number => Math.abs(zone.reduce((sum, contour) => sum + signedArea(contour), 0));

const sameBend = (one: Bend, other: Bend, over: boolean): boolean =>
  one.kind === other.kind && turnedOver(one.direction, over) === other.direction && Math.abs(one.bendAngle - other.bendAngle) <= NEAR_ANGLE &&
  near(one.insideRadius, other.insideRadius) && alike(zoneArea(one), zoneArea(other));

/** What is formed into a plate of one part and of the other. */
const sameFormed = (one: readonly Formed[], other: readonly Formed[], motion: Laid): boolean =>
  paired(one, other, (a, b) => a.kind === b.kind && turnedOver(a.side, motion.over) === b.side && near(a.height, b.height) && sameCut(motion)(a.outline, b.outline));

const ends = (bend: Bend, plate: number): readonly [Vec2, Vec2] => {
  const { from, to } = bend.sides.find((side) => side.plate === plate)!.line;
  return [from, to];
};

/**
 * Are two parts one shape that lies differently in space, whichever way its plates and bends are numbered, framed or turned over: two
 * uses of one product in an assembly? Mirror images are not. False too where a curved outline is cut into other edges.
 */
export const sameShape = (one: Part, other: Part): boolean => {
  if (!near(one.thickness, other.thickness) || one.plates.length !== other.plates.length || one.bends.length !== other.bends.length) return false;
  const [hang, hangs] = [neighboursOf(one), neighboursOf(other)];
  const formedOn = (part: Part, plate: number): readonly Formed[] => (part.formed ?? []).filter((it) => it.plate === plate);

  /** Does all that hangs on this plate, but for what lies back across `came`, lie on the other's as these two plates do? */
  const follows = (p: number, q: number, motion: Laid, came: number, cameBy: number): boolean => {
    if (!samePlate(one.plates[p]!, other.plates[q]!, motion) || !sameFormed(formedOn(one, p), formedOn(other, q), motion)) return false;
    const [mine, theirs] = [hang[p]!.filter(({ bend }) => bend !== came), hangs[q]!.filter(({ bend }) => bend !== cameBy)];
    return paired(mine, theirs, (a, b) => {
      const [bend, twin] = [one.bends[a.bend]!, other.bends[b.bend]!];
      if (!sameBend(bend, twin, motion.over)) return false;
      const [from, to] = ends(bend, p).map((v) => place(motion, v)) as [Vec2, Vec2];
      const [there, back] = ends(twin, q);
      const straight = nearPoint(from, there) && nearPoint(to, back);
      if (!straight && !(nearPoint(from, back) && nearPoint(to, there))) return false;
      const [first, second] = ends(twin, b.plate);
      const beyond = laid(ends(bend, a.plate), straight ? [first, second] : [second, first], motion.over);
      return beyond !== null && follows(a.plate, b.plate, beyond, a.bend, b.bend);
    });
  };

  const outline = one.plates[0]!.outline;
  const edge: readonly [Vec2, Vec2] = [pointOf(outline[0]!), pointOf(outline[1]!)];
  return other.plates.some((plate, q) => plate.outline.some((v, i) => {
    const next = plate.outline[(i + 1) % plate.outline.length]!;
    // turned over, the outline runs the other way round
    return [laid(edge, [pointOf(v), pointOf(next)], false), laid(edge, [pointOf(next), pointOf(v)], true)].some((motion) => motion !== null && follows(0, q, motion, -1, -1));
  }));
};

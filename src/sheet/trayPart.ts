import { setback } from '../forming/index.js';
import { type Vec2, add2, cross2, dot2, length2, scale2, sub2, unit2 } from '../geometry/index.js';
import { cornersOf, inset } from './inset.js';
import type { Part } from './part.js';
import { type Result, done, refused } from './result.js';
import { type Sketch, type Turn, grow, partOf, polygon, radiusOf, turnOf } from './sketch.js';

/** One flange of an arm: outside length in mm as on a drawing (see `setback`) and the bend before it. */
export interface ArmFlange {
  readonly length: number;
  readonly turn: Turn;
}

/** A flat base with a chain of flanges on each of its edges: trays, lids, boxes with returns and lips. */
export interface Tray {
  readonly name: string;
  readonly thickness: number;
  readonly insideRadius: number;
  /** Outside length and width in mm, or the outside corners of a convex polygon, counter-clockwise. */
  readonly base: readonly [number, number] | readonly Vec2[];
  /** For each edge in turn (a rectangle: y = 0, x = length, y = width, x = 0) its flanges from the base outwards. */
  readonly arms: readonly (readonly ArmFlange[])[];
  /** mm of clear distance between neighbouring arms at a corner, beside what their mitre needs. Default 0.5. */
  readonly gap?: number;
}

const RADIANS = Math.PI / 180;
/** mm, common practice, no source: wide enough for a laser's cut and a weld, narrow enough to look closed. */
const CORNER_GAP = 0.5;
/** mm: an edge of the outline no longer than this is rounding, not an edge. */
const NO_EDGE = 1e-9;
/** Points taken along each bend's arc to see how far inwards it reaches; arcs of 90 degrees bulge by less than 1 % of R between. */
const ARC_POINTS = 8;

/** How far (mm) the metal of an arm reaches inwards of the outer plane of its edge: at each plate's two ends, at each bend. */
const reaches = (arm: readonly ArmFlange[], flats: readonly number[], radii: readonly number[], first: number, t: number) => {
  let at: Vec2 = [first, 0];
  let heading: Vec2 = [-1, 0];
  let normal: Vec2 = [0, 1];
  const inner = (p: Vec2, n: Vec2): number => p[0] + (Math.abs(n[0]) * t) / 2;
  return arm.map((flange, i) => {
    const turn = turnOf(flange.turn) * RADIANS;
    const s = Math.sign(turn);
    const radius = radii[i]! + t / 2;
    const [p, h, n] = [at, heading, normal];
    let bend = -Infinity;
    for (let k = 0; k <= ARC_POINTS; k++) {
      const x = (Math.abs(turn) * k) / ARC_POINTS;
      at = add2(p, add2(scale2(h, radius * Math.sin(x)), scale2(n, s * radius * (1 - Math.cos(x)))));
      heading = add2(scale2(h, Math.cos(x)), scale2(n, s * Math.sin(x)));
      normal = sub2(scale2(n, Math.cos(x)), scale2(h, s * Math.sin(x)));
      bend = Math.max(bend, inner(at, normal));
    }
    at = add2(at, scale2(heading, flats[i]!));
    return { bend, end: inner(at, normal) };
  });
};

/** The part, or the flange that is too short for its bends or too long for its mitre. */
export const trayPart = (tray: Tray): Result<Part> => {
  const { name, thickness: t, insideRadius, arms, gap = CORNER_GAP } = tray;
  const corners = cornersOf(tray.base);
  const count = corners.length;
  if (arms.length !== count) return refused('wrong measure', `A base of ${count} edges needs ${count} arms (empty where there is none), not ${arms.length}.`);
  const back = (flange: ArmFlange | undefined): number =>
    flange === undefined ? 0 : setback(radiusOf(flange.turn, insideRadius), t, Math.abs(turnOf(flange.turn)));
  const base = inset(corners, arms.map((arm) => back(arm[0])));
  const sketch: Sketch = { plates: [], bends: [] };
  const outline: Vec2[] = [];
  sketch.plates.push({ outline: [], holes: [] });
  for (let i = 0; i < count; i++) {
    const [from, to] = [corners[i]!, corners[(i + 1) % count]!];
    const along = unit2(sub2(to, from));
    const length = length2(sub2(to, from));
    const [start, end] = [base[i]!, base[(i + 1) % count]!];
    const arm = arms[i]!;
    outline.push(start);
    if (arm.length === 0) continue;
    const radii = arm.map((flange) => radiusOf(flange.turn, insideRadius));
    const flats = arm.map((flange, k) => flange.length - back(flange) - back(arm[k + 1]));
    const short = flats.findIndex((flat) => flat <= 0);
    if (short !== -1) {
      return refused('flange too short', `Flange ${short + 1} of arm ${i + 1}, ${arm[short]!.length} mm outside, leaves ${flats[short]!.toFixed(2)} mm flat between its bends.`, { by: -flats[short]! });
    }
    /** mm of the edge that is lost at a corner by metal that reaches `depth` inwards. */
    const trim = (corner: number, depth: number): number => {
      const neighbour = corner === i ? arms[(i + count - 1) % count]! : arms[(i + 1) % count]!;
      if (neighbour.length === 0) return 0;
      const [p, q, r] = [corners[(corner + count - 1) % count]!, corners[corner % count]!, corners[(corner + 1) % count]!];
      const half = (Math.PI - Math.atan2(cross2(sub2(q, p), sub2(r, q)), dot2(sub2(q, p), sub2(r, q)))) / 2;
      return Math.max(0, depth) / Math.tan(half) + gap / 2 / Math.sin(half);
    };
    const reach = reaches(arm, flats, radii, back(arm[0]), t);
    // the ends of bend line k, in x of the arm's plates: x runs against the edge, 0 at its end corner
    const ends = [...arm.map((_, k) => k), arm.length].map((k) => {
      const depth = Math.max(k === 0 ? back(arm[0]) : reach[k - 1]!.end, reach[k]?.bend ?? -Infinity);
      return { low: trim(i + 1, depth), high: length - trim(i, depth) };
    });
    ends[0] = {
      low: Math.max(ends[0]!.low, length - dot2(sub2(end, from), along)),
      high: Math.min(ends[0]!.high, length - dot2(sub2(start, from), along)),
    };
    // an arm never widens outwards
    for (let k = 1; k < ends.length; k++) {
      ends[k] = { low: Math.max(ends[k]!.low, ends[k - 1]!.low), high: Math.min(ends[k]!.high, ends[k - 1]!.high) };
    }
    const closed = ends.findIndex(({ low, high }) => high <= low);
    if (closed !== -1) {
      return refused('wrong measure', `Arm ${i + 1} has no width left at level ${closed + 1}: its mitres meet.`, { by: ends[closed]!.low - ends[closed]!.high });
    }
    const onBase = (x: number): Vec2 => add2(start, scale2(along, length - x - dot2(sub2(start, from), along)));
    let edge = { from: onBase(ends[0].high), to: onBase(ends[0].low) };
    for (const [point, other] of [[edge.from, start], [edge.to, end]] as const) {
      if (length2(sub2(point, other)) > NO_EDGE) outline.push(point);
    }
    let parent = 0;
    arm.forEach((flange, k) => {
      const [at, next] = [ends[k]!, ends[k + 1]!];
      const plate = polygon([
        [at.low, 0],
        [at.high, 0],
        [next.high, flats[k]!],
        [next.low, flats[k]!],
      ]);
      parent = grow(sketch, parent, edge, flange.turn, insideRadius, plate, at.low);
      edge = { from: [next.high, flats[k]!], to: [next.low, flats[k]!] };
    });
  }
  sketch.plates[0] = { outline: polygon(outline), holes: [] };
  return done(partOf(name, t, sketch, `Base and flanges are outside measures; neighbouring arms keep ${gap} mm at the corners.`));
};

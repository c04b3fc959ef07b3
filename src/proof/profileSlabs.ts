import { type Contour, type Vec2, flatten } from '../geometry/index.js';
import type { Segment } from '../shop/index.js';
import type { Placed } from '../trial/index.js';
import type { Slab } from './body.js';
import { type Kernel, section } from './engine.js';
import { CHORD_ERROR, RECORD } from './tolerances.js';

/** A profile in (back, up) as a polygon, moved by `by`; reversed, front and back are exchanged first. */
export const outlineOf = (profile: Contour, facing: 'as drawn' | 'reversed' = 'as drawn', by: Vec2 = [0, 0]): Vec2[] =>
  flatten(profile, CHORD_ERROR).map((p): Vec2 => [(facing === 'reversed' ? -p[0] : p[0]) + by[0], p[1] + by[1]]);

/** The part of a polygon that lies below `up`. */
const below = (kernel: Kernel, polygon: readonly Vec2[], up: number): Vec2[][] => {
  const whole = section(kernel, [polygon]);
  const [x, y] = [polygon.map((p) => p[0]), polygon.map((p) => p[1])];
  const [x0, x1, y0] = [Math.min(...x) - 1, Math.max(...x) + 1, Math.min(...y) - 1];
  const window = section(kernel, [[[x0, y0], [x1, y0], [x1, up], [x0, up]]]);
  const cut = whole.intersect(window);
  const pieces = cut.toPolygons().map((p) => p.map((q): Vec2 => [q[0], q[1]]));
  for (const s of [whole, window, cut]) s.delete();
  return pieces;
};

/** Segments that stand side by side without a gap become one slab, so that no seam is left between them. */
const joined = (spans: readonly (readonly [number, number])[]): (readonly [number, number])[] => {
  const out: [number, number][] = [];
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0])) {
    const last = out[out.length - 1];
    if (last !== undefined && from <= last[1] + RECORD) last[1] = Math.max(last[1], to);
    else out.push([from, to]);
  }
  return out;
};

const handAt = (hand: 'left' | 'right', facing: 'as drawn' | 'reversed'): 'left' | 'right' =>
  facing === 'as drawn' ? hand : hand === 'left' ? 'right' : 'left';

/** The rack's segment that a placed one was taken from. Turned about, a tool's left hand is its right. */
export const segmentOf = (
  segments: readonly Segment[],
  placed: Placed,
  facing: 'as drawn' | 'reversed',
): Segment | undefined => {
  const ofLength = segments.filter((s) => Math.abs(s.length - placed.length) <= RECORD);
  return ofLength.find((s) => (s.ear === undefined ? undefined : handAt(s.ear.hand, facing)) === placed.ear);
};

/** Sliding ears as they hang and as they are out, those that slide equally far together. */
export interface SlidingFeet {
  readonly slides: number;
  readonly hanging: readonly Slab[];
  readonly out: readonly Slab[];
}

const shifted = (polygons: Slab['polygons'], down: number): Slab['polygons'] => polygons.map((p) => p.map((q): Vec2 => [q[0], q[1] - down]));

/**
 * The sliding ears of a row. Out, a foot stands at the outer end of its segment; hanging, the segment's whole length up to
 * the foot's height has slid as far in as down.
 */
export const slidingFeet = (
  kernel: Kernel,
  outline: readonly Vec2[],
  tip: number,
  row: readonly Placed[],
  segments: readonly Segment[],
  facing: 'as drawn' | 'reversed',
): SlidingFeet[] => {
  const sorts = new Map<number, { hanging: Slab[]; out: Slab[] }>();
  for (const placed of row) {
    const ear = placed.ear === undefined ? undefined : segmentOf(segments, placed, facing)?.ear;
    if (ear?.slides === undefined) continue;
    const sort = sorts.get(ear.slides) ?? { hanging: [], out: [] };
    sorts.set(ear.slides, sort);
    const [from, to] = [placed.from, placed.from + placed.length];
    const polygons = below(kernel, outline, tip + ear.footHeight);
    const inwards = placed.ear === 'left' ? ear.slides : -ear.slides;
    sort.out.push(placed.ear === 'left' ? { polygons, from, to: from + ear.reach } : { polygons, from: to - ear.reach, to });
    sort.hanging.push({ polygons: shifted(polygons, ear.slides), from: from + inwards, to: to + inwards });
  }
  return [...sorts].map(([slides, sort]) => ({ slides, ...sort }));
};

/**
 * A row of segments as slabs, the feet of sliding ears left out: full profile over the bodies; over the reach of an ear's foot, at its outer end, what
 * lies below the foot's height counted from the outline's own tip at `tip` up.
 */
export const rowSlabs = (
  kernel: Kernel,
  outline: readonly Vec2[],
  tip: number,
  row: readonly Placed[],
  segments: readonly Segment[],
  facing: 'as drawn' | 'reversed',
): Slab[] => {
  const bodies: [number, number][] = [];
  const feet: Slab[] = [];
  for (const placed of row) {
    const [from, to] = [placed.from, placed.from + placed.length];
    const ear = placed.ear === undefined ? undefined : segmentOf(segments, placed, facing)?.ear;
    if (ear === undefined) {
      bodies.push([from, to]);
      continue;
    }
    const edge = placed.ear === 'left' ? from + ear.reach : to - ear.reach;
    bodies.push(placed.ear === 'left' ? [edge, to] : [from, edge]);
    if (ear.slides !== undefined) continue;
    const polygons = below(kernel, outline, tip + ear.footHeight);
    feet.push(placed.ear === 'left' ? { polygons, from, to: edge } : { polygons, from: edge, to });
  }
  return [...joined(bodies).map(([from, to]): Slab => ({ polygons: [outline], from, to })), ...feet];
};

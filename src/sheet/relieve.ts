import { type Contour, type Vec2, cross2, dot2, sub2, unit2 } from '../geometry/index.js';
import type { Part } from './part.js';
import { relieved } from './relieved.js';

const point = (v: { readonly x: number; readonly y: number }): Vec2 => [v.x, v.y];

/** What of a straight-edged contour lies on the side of a line where `keep` is positive. */
const clipped = (contour: Contour, keep: (p: Vec2) => number): Contour =>
  contour.flatMap((v, i) => {
    const w = contour[(i + 1) % contour.length]!;
    const [a, b] = [keep(point(v)), keep(point(w))];
    const share = a / (a - b);
    const between = { ...v, x: v.x + (w.x - v.x) * share, y: v.y + (w.y - v.y) * share };
    return [...(a >= 0 ? [v] : []), ...((a >= 0) !== (b >= 0) ? [between] : [])];
  });

/**
 * The part with a relief at both ends of a flange that one bend alone holds: `by` mm taken off along its bend line, the bend shortened
 * with it. Null where the plate is no such flange, has round edges, has a hole in the way or too little left.
 */
export const relieve = (part: Part, plate: number, by: number): Part | null => {
  const joins = part.bends.filter((b) => b.sides.some((s) => s.plate === plate));
  const was = part.plates[plate];
  if (joins.length !== 1 || !was || was.outline.some((v) => v.bulge !== 0)) return null;
  const { from, to } = joins[0]!.sides.find((s) => s.plate === plate)!.line;
  const u = unit2(sub2(to, from));
  const along = (p: Vec2): number => dot2(u, sub2(p, from));
  const places = was.outline.map((v) => along(point(v)));
  const [low, high] = [Math.min(...places) + by, Math.max(...places) - by];
  const reach = was.outline.map((v) => Math.abs(cross2(u, sub2(point(v), from))));
  if (high - low < Math.max(...reach) / 10 || high <= low) return null;
  if (was.holes.some((hole) => hole.some((v) => along(point(v)) < low || along(point(v)) > high))) return null;
  const outline = clipped(clipped(was.outline, (p) => along(p) - low), (p) => high - along(p));
  const plates = part.plates.map((p, i) => (i === plate ? { ...p, outline } : p));
  const { volume: _, reading: __, ...same } = part;
  return { ...same, plates, bends: part.bends.map((bend) => relieved(part, plates, bend, bend)) };
};

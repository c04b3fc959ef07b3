import { type Vec2, cross2, dot2, flatten, sub2, unit2 } from '../geometry/index.js';
import type { Part } from '../sheet/index.js';

/** mm between the points that edges are looked at in, and how arcs are cut to chords. */
const CHORD = 0.02;
const APART = 0.5;
/** mm: an edge that begins at the bend line's own end, or lies on it, is no cut-out beside it. */
const AT_END = 0.5;
const ON_LINE = 0.01;

/**
 * The nearest edge of a hole or cut-out to a bend's tangent lines, mm, among those that lie beside bent metal; 0 for a hole
 * that the bend crosses, null when there is none within `within` mm. A cut-out that goes through the bend itself parts it and
 * does not count, nor does the flange's own far edge beyond `within`.
 */
export const nearestCut = (part: Part, bend: number, within: number): number | null => {
  const { sides, zone } = part.bends[bend]!;
  // outlines of the bent metal run counter-clockwise; what runs the other way is a hole in the bend
  if (zone.some((contour) => turned(contour) < 0)) return 0;
  const bent = zone.filter((c) => c.length > 0).map((c) => [Math.min(...c.map((v) => v.x)), Math.max(...c.map((v) => v.x))] as const);
  let nearest = within;
  for (const { plate, line } of sides) {
    const along = unit2(sub2(line.to, line.from));
    const reach: readonly (readonly [number, number])[] = bent.length > 0 ? bent : [[0, dot2(along, sub2(line.to, line.from))]];
    for (const contour of [part.plates[plate]!.outline, ...part.plates[plate]!.holes]) {
      for (const p of closely(flatten(contour, CHORD))) {
        const u = dot2(along, sub2(p, line.from));
        const off = Math.abs(cross2(along, sub2(p, line.from)));
        if (off > ON_LINE && off < nearest && reach.some(([from, to]) => u > from + AT_END && u < to - AT_END)) nearest = off;
      }
    }
  }
  return nearest < within ? nearest : null;
};

/** Twice the signed area of a contour of straight edges. */
const turned = (contour: Part['bends'][number]['zone'][number]): number =>
  contour.reduce((sum, v, i) => {
    const w = contour[(i + 1) % contour.length]!;
    return sum + v.x * w.y - w.x * v.y;
  }, 0);

/** The corners and places between them. */
const closely = (points: readonly Vec2[]): Vec2[] =>
  points.flatMap((p, i): Vec2[] => {
    const q = points[(i + 1) % points.length]!;
    const pieces = Math.max(1, Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / APART));
    return Array.from({ length: pieces }, (_, k) => [p[0] + ((q[0] - p[0]) * k) / pieces, p[1] + ((q[1] - p[1]) * k) / pieces]);
  });

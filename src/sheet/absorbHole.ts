import { type Contour, type Vec2, bounds, flatten, signedArea, vertex } from '../geometry/index.js';
import { bendFrame } from './bendFrame.js';
import { chainLoops } from './chainLoops.js';
import type { FlatEdge } from './flatPieces.js';
import { inLine } from './inLine.js';
import type { Line, Plate } from './part.js';
import { splitByLevel } from './splitByLevel.js';

/** A hole that ends nearer to the tangent line than this (mm) on the plate's side stays the plate's. */
const ON_LINE = 1e-3;
/** mm by which chords may leave a hole's arc where it comes to lie in a zone, which has straight edges only. */
const CHORD_ERROR = 0.01;

/** A plate and a zone after a tangent line has moved into a hole; `depth` mm of the hole now lie in the bend. */
export interface Absorbed {
  readonly plate: Plate;
  readonly zone: readonly Contour[];
  readonly depth: number;
}

const contourEdges = (contour: Contour): FlatEdge[] =>
  contour.map((v, i) => {
    const next = contour[(i + 1) % contour.length]!;
    return { from: [v.x, v.y], to: [next.x, next.y], bulge: v.bulge };
  });

/** Edges along a level y (within ON_LINE) without what lies between the pairs of x in `gaps`. */
const opened = (edges: readonly FlatEdge[], y: number, gaps: readonly number[]): FlatEdge[] =>
  edges.flatMap((edge) => {
    const level = edge.bulge === 0 && Math.abs(edge.from[1] - y) < ON_LINE && Math.abs(edge.to[1] - y) < ON_LINE;
    if (!level) return [edge];
    const way = Math.sign(edge.to[0] - edge.from[0]);
    const [low, high] = way > 0 ? [edge.from[0], edge.to[0]] : [edge.to[0], edge.from[0]];
    let free: (readonly [number, number])[] = [[low, high]];
    for (let k = 0; k + 1 < gaps.length; k += 2) {
      free = free.flatMap(([a, b]) => [[a, Math.min(b, gaps[k]!)] as const, [Math.max(a, gaps[k + 1]!), b] as const].filter(([p, q]) => q - p > 0));
    }
    return free.map(([a, b]): FlatEdge => ({ from: [way > 0 ? a : b, y], to: [way > 0 ? b : a, y], bulge: 0 }));
  });

/**
 * Hole number `hole` of a plate whose tangent line has moved to `line`: what lies beyond the line is taken out of the
 * plate and put into the bend's zone. `which` side of the bend the plate is at; `allowance` (mm) scales the zone. Null when
 * the hole stays the plate's, or reaches past the line's ends.
 */
export const absorbHole = (plate: Plate, hole: number, line: Line, which: 0 | 1, zone: readonly Contour[], allowance: number): Absorbed | null => {
  const length = Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);
  // a frame in which the plate lies over y = 0 and its outline runs along it towards +x
  const inwards = ([x, y]: Vec2): Vec2 => {
    const [u, v] = inLine(line, [x, y]);
    return which === 1 ? [u, v] : [length - u, -v];
  };
  const frame = bendFrame(line);
  const outwards = ([x, y]: Vec2): Vec2 => {
    const [u, v] = which === 1 ? [x, y] : [length - x, -y];
    return [frame.o[0] + frame.x[0] * u + frame.y[0] * v, frame.o[1] + frame.x[1] * u + frame.y[1] * v];
  };
  const mapped = (contour: Contour, map: (p: Vec2) => Vec2): Contour => contour.map((v) => vertex(...map([v.x, v.y]), v.bulge));
  const local = mapped(plate.holes[hole]!, inwards);
  const [low, high] = bounds([local]);
  if (low[1] > -ON_LINE || low[0] < ON_LINE || high[0] > length - ON_LINE) return null;
  const { over, under, at } = splitByLevel(local);
  const others = plate.holes.filter((_, k) => k !== hole);
  let holes = others;
  let outline = plate.outline;
  if (at.length > 0) {
    const chained = chainLoops([...opened(contourEdges(mapped(plate.outline, inwards)), 0, at), ...over]);
    if ('looseEnd' in chained) return null;
    const loops = [...chained.loops].sort((a, b) => signedArea(b) - signedArea(a));
    // further loops that run counter-clockwise would be loose scraps of metal between hole and line
    outline = mapped(loops[0]!, outwards);
    holes = [...others, ...loops.slice(1).filter((loop) => signedArea(loop) < 0).map((loop) => mapped(loop, outwards))];
  }
  // depth under the line counts from the zone's own edge inwards
  const inZone = ([x, y]: Vec2): Vec2 => (which === 1 ? [x, allowance + y] : [length - x, -y]);
  const void_ = under.flatMap((edge): FlatEdge[] => {
    const points = edge.bulge === 0 ? [edge.from, edge.to] : flatten([vertex(edge.from[0], edge.from[1], edge.bulge), vertex(edge.to[0], edge.to[1])], CHORD_ERROR);
    return points.slice(1).map((to, k) => ({ from: inZone(points[k]!), to: inZone(to), bulge: 0 }));
  });
  const gaps = which === 1 ? at : at.map((x) => length - x).reverse();
  const stretched = zone.flatMap((contour) => contourEdges(contour.map((v) => vertex(v.x, v.y * allowance))));
  const chained = chainLoops([...opened(stretched, which === 1 ? allowance : 0, gaps), ...void_]);
  if ('looseEnd' in chained) return null;
  return {
    plate: { outline, holes },
    zone: chained.loops.map((loop) => loop.map((v) => vertex(v.x, v.y / allowance))),
    depth: -low[1],
  };
};

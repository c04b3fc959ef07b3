import { type Contour, type Vec2, length2, sub2, vertex } from '../geometry/index.js';
import type { FlatEdge } from './flatPieces.js';

/** Ends nearer than this (mm) are one corner: far above what a reader's rounding leaves, far below a laser's kerf. */
const SAME_CORNER = 2e-3;
/** A corner that leaves the straight line through its neighbours by less than this (mm) is no corner: rounding of a reader. */
const STRAIGHT = 1e-5;

/** Radians: headings that differ by less run along one another (0.001 mm over a kilometre). */
const SAME_HEADING = 1e-9;

/** The loops, or a loose end. */
export type Chained = { readonly loops: readonly Contour[] } | { readonly looseEnd: Vec2 };

/** Corners found again by place, ends within `SAME_CORNER` of one another. */
const corners = () => {
  const cells = new Map<string, number[]>();
  const points: Vec2[] = [];
  const cell = (x: number, y: number): string => `${x},${y}`;
  return (p: Vec2): number => {
    const [cx, cy] = [Math.floor(p[0] / SAME_CORNER), Math.floor(p[1] / SAME_CORNER)];
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        const found = cells.get(cell(cx + dx, cy + dy))?.find((k) => length2(sub2(points[k]!, p)) < SAME_CORNER);
        if (found !== undefined) return found;
      }
    }
    const key = cell(cx, cy);
    cells.set(key, [...(cells.get(key) ?? []), points.length]);
    return points.push(p) - 1;
  };
};

/** Direction in which an edge leaves its start (or, `end`, in which it arrives), radians; arcs by their tangent. */
const heading = (edge: FlatEdge, end: boolean): number => {
  const chord = sub2(edge.to, edge.from);
  const half = 2 * Math.atan(edge.bulge);
  return Math.atan2(chord[1], chord[0]) + (end ? half : -half);
};

/** Without corners in the middle of a straight run. */
const simplified = (loop: readonly FlatEdge[]): Contour => {
  const ring = [...loop];
  for (let i = 0; i < ring.length && ring.length > 2; i++) {
    const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
    if (a.bulge !== 0 || b.bulge !== 0) continue;
    const [first, second, whole] = [sub2(a.to, a.from), sub2(b.to, b.from), sub2(b.to, a.from)];
    const off = Math.abs(first[0] * whole[1] - first[1] * whole[0]) / Math.max(length2(whole), SAME_CORNER);
    if (off > STRAIGHT || first[0] * second[0] + first[1] * second[1] < 0) continue;
    ring[i] = { from: a.from, to: b.to, bulge: 0 };
    ring.splice((i + 1) % ring.length, 1);
    i = Math.max(-1, i - 2);
  }
  return ring.map((edge) => vertex(edge.from[0], edge.from[1], edge.bulge));
};

/**
 * Chains directed edges (metal to the left) into loops. Where several edges leave one corner, the path follows the edge of
 * the metal that it came along, so pieces that touch in a point stay apart.
 */
export const chainLoops = (edges: readonly FlatEdge[]): Chained => {
  const corner = corners();
  const numbered = edges
    .map((edge) => ({ edge, start: corner(edge.from), end: corner(edge.to) }))
    // no longer than rounding: both ends are one corner (an arc of more than half a turn still runs round)
    .filter(({ edge, start, end }) => start !== end || Math.abs(edge.bulge) > 1);
  const real = numbered.map(({ edge }) => edge);
  const starts = numbered.map(({ start }) => start);
  const ends = numbered.map(({ end }) => end);
  const leaving = new Map<number, number[]>();
  starts.forEach((node, k) => leaving.set(node, [...(leaving.get(node) ?? []), k]));
  const used = real.map(() => false);
  const loops: Contour[] = [];
  for (let first = 0; first < real.length; first++) {
    if (used[first]) continue;
    const loop: FlatEdge[] = [];
    for (let k = first; ; ) {
      used[k] = true;
      loop.push(real[k]!);
      const back = heading(real[k]!, true) + Math.PI;
      // clockwise from where we came: the first edge that leaves bounds the metal we run along
      const turned = (o: number): number => {
        const way = (((back - heading(real[o]!, false)) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
        return way < SAME_HEADING ? way + 2 * Math.PI : way; // back the way we came: last of all
      };
      const choices = (leaving.get(ends[k]!) ?? []).filter((o) => !used[o] || o === first);
      if (choices.length === 0) return { looseEnd: real[k]!.to };
      const next = choices.reduce((a, b) => (turned(b) < turned(a) ? b : a));
      if (next === first) break;
      k = next;
    }
    loops.push(simplified(loop));
  }
  return { loops };
};

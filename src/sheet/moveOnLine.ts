import { type Contour, type Vec2, cross2, dot2, left2, length2, scale2, sub2, unit2, vertex } from '../geometry/index.js';
import { inLine } from './inLine.js';
import type { Line } from './part.js';

/** A corner this near to a bend's tangent line lies on it (mm): readers round to 1e-6, nobody draws an edge so near on purpose. */
export const ON_LINE = 1e-3;
/** Corners nearer than this (mm) are one. */
const SAME_CORNER = 1e-6;
/** Directions differ by less than this sine when an edge runs on along a tangent line. */
const PARALLEL = 1e-4;
/** Width (mm) of the slit cut beside a bend that reaches further into its plate than the edge beside it: a laser's kerf. Common practice, no source. */
export const RELIEF = 0.2;
/** An edge at less than this sine to the line (about 17 degrees) would carry its corner too far along: it goes straight. */
const STEEPEST_SLIDE = 0.3;

const point = (v: { readonly x: number; readonly y: number }): Vec2 => [v.x, v.y];

/** The contour with a corner at each end of the line where that end falls inside one of its straight edges. */
const withEnds = (contour: Contour, line: Line): Contour =>
  contour.flatMap((v, i) => {
    const next = contour[(i + 1) % contour.length]!;
    if (v.bulge !== 0) return [v];
    const edge = sub2(point(next), point(v));
    const length = length2(edge);
    if (length === 0) return [v];
    const inside = [line.from, line.to]
      .map((end) => ({ end, along: dot2(sub2(end, point(v)), edge) / length, off: cross2(edge, sub2(end, point(v))) / length }))
      .filter(({ along, off }) => Math.abs(off) < ON_LINE && along > ON_LINE && along < length - ON_LINE)
      .sort((a, b) => a.along - b.along);
    return [v, ...inside.map(({ end }) => vertex(end[0], end[1]))];
  });

/** The contour without corners that repeat the last one, or from which the path turns straight back. */
const withoutSpikes = (contour: Contour): Contour => {
  const ring = [...contour];
  for (let i = 0; i < ring.length && ring.length > 3; i++) {
    const [a, b, c] = [ring[(i + ring.length - 1) % ring.length]!, ring[i]!, ring[(i + 1) % ring.length]!];
    if (a.bulge !== 0 || b.bulge !== 0) continue;
    const [before, after] = [sub2(point(b), point(a)), sub2(point(c), point(b))];
    const [p, q] = [length2(before), length2(after)];
    const back = dot2(before, after) < 0 && Math.abs(cross2(before, after)) < PARALLEL * p * q;
    if (p > SAME_CORNER && q > SAME_CORNER && !back) continue;
    ring.splice(i, 1);
    i = Math.max(-1, i - 2);
  }
  return ring;
};

/**
 * The contour with what lies on the line moved by `delta` mm to the line's left. Where the contour runs on along the
 * line past the line's end, the end becomes a step: the metal beside the bend stays where it is, unless it is a shoulder
 * narrower than `narrow`, which goes with the bend. A step into the plate (`deepens`) gets a relief slit.
 */
export const moveOnLine = (contour: Contour, line: Line, delta: number, narrow: number, deepens: boolean): Contour => {
  const by = scale2(left2(unit2(sub2(line.to, line.from))), delta);
  const length = length2(sub2(line.to, line.from));
  const ring = withEnds(contour, line);
  const places = ring.map((v) => inLine(line, point(v)));
  const on = places.map(([u, v]) => Math.abs(v) < ON_LINE && u > -ON_LINE && u < length + ON_LINE);
  /** mm that the straight edge between a corner on the line and its neighbour runs on along the line, outwards. */
  const shoulder = (at: number, other: number, bulge: number): number => {
    if (bulge !== 0 || on[other]) return 0;
    const [p, q] = [places[at]!, places[other]!];
    const run = Math.abs(q[0] - p[0]);
    return Math.abs(q[1]) < ON_LINE + PARALLEL * run && (q[0] < -ON_LINE || q[0] > length + ON_LINE) ? run : 0;
  };
  const before = (i: number): number => (i + ring.length - 1) % ring.length;
  const after = (i: number): number => (i + 1) % ring.length;
  const shoulders = ring.map((v, i) =>
    on[i] ? ([shoulder(i, before(i), ring[before(i)]!.bulge), shoulder(i, after(i), v.bulge)] as const) : ([0, 0] as const),
  );
  const goes = on.map((is, i) => {
    const [left, right] = [shoulders[before(i)]![1], shoulders[after(i)]![0]];
    return is || (left > 0 && left < narrow) || (right > 0 && right < narrow);
  });
  const u = unit2(sub2(line.to, line.from));
  /** mm along the line for a mm to its left, so that a corner slides on the edge by which it leaves the line. */
  const slide = (i: number): number => {
    const leaving = [
      { other: before(i), bulge: ring[before(i)]!.bulge },
      { other: after(i), bulge: ring[i]!.bulge },
    ].filter(({ other }) => !goes[other]);
    if (leaving.length !== 1 || leaving[0]!.bulge !== 0) return 0;
    const [p, q] = [places[i]!, places[leaving[0]!.other]!];
    const [du, dv] = [q[0] - p[0], q[1] - p[1]];
    return Math.abs(dv) > STEEPEST_SLIDE * Math.hypot(du, dv) ? du / dv : 0;
  };
  return withoutSpikes(
    ring.flatMap((v, i) => {
      if (!goes[i]) return [v];
      const along = scale2(u, slide(i) * delta);
      const shifted = vertex(v.x + by[0] + along[0], v.y + by[1] + along[1], v.bulge);
      const steps = shoulders[i]!.map((run) => run >= narrow);
      if (!steps[0] && !steps[1]) return [shifted];
      // a step into the plate is cut beside the bend, where the plate's own metal stays flat
      const beside = scale2(u, deepens ? (places[i]![0] < length / 2 ? -RELIEF : RELIEF) : 0);
      const stays = vertex(v.x + beside[0], v.y + beside[1]);
      const goesDown = vertex(shifted.x + beside[0], shifted.y + beside[1]);
      return steps[0] ? [stays, { ...goesDown, bulge: v.bulge }] : [goesDown, stays];
    }),
  );
};

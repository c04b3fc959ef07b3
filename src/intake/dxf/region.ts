import { type Contour, type Vec2, add2, arcOf, dot2, flatten, left2, length2, scale2, signedArea, sub2, unit2 } from '../../geometry/index.js';
import { type FlatEdge, chainLoops } from '../../sheet/index.js';

/** A straight cut through metal. */
export interface Cut {
  readonly from: Vec2;
  readonly to: Vec2;
}

/** Metal in one plane: outlines counter-clockwise, holes clockwise, true arcs. */
export interface Metal {
  readonly contours: readonly Contour[];
  readonly edges: readonly FlatEdge[];
  readonly inside: (p: Vec2) => boolean;
}

/** mm: places on a line nearer than this are one; what the chaining of loops takes for one corner. */
const SAME_PLACE = 1.5e-3;
/** mm to both sides of a cut at which metal is asked for: five times what the chords below leave of an arc. */
const BESIDE = 0.01;
const CHORD = 0.002;

const edgesOf = (contour: Contour): FlatEdge[] =>
  contour.map((v, i) => {
    const next = contour[(i + 1) % contour.length]!;
    return { from: [v.x, v.y], to: [next.x, next.y], bulge: v.bulge };
  });

export const within = (ring: readonly Vec2[], [x, y]: Vec2): boolean => {
  let odd = false;
  for (let i = 0; i < ring.length; i++) {
    const [p, q] = [ring[i]!, ring[(i + 1) % ring.length]!];
    if (p[1] > y !== q[1] > y && x < p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1])) odd = !odd;
  }
  return odd;
};

export const metalOf = (contours: readonly Contour[]): Metal => {
  const rings = contours.map((contour) => {
    const points = flatten(contour, CHORD);
    const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
    const least = (list: readonly number[]): number => list.reduce((a, b) => Math.min(a, b), Infinity);
    const most = (list: readonly number[]): number => list.reduce((a, b) => Math.max(a, b), -Infinity);
    return { points, low: [least(xs), least(ys)] as Vec2, high: [most(xs), most(ys)] as Vec2 };
  });
  const inside = (p: Vec2): boolean =>
    rings.reduce((odd, { points, low, high }) => {
      const near = p[0] >= low[0] && p[0] <= high[0] && p[1] >= low[1] && p[1] <= high[1];
      return near && within(points, p) ? !odd : odd;
    }, false);
  return { contours, edges: contours.flatMap(edgesOf), inside };
};

/** Shares (0 to 1, arcs by angle) of an edge at which it crosses the cut, and the places along the cut (mm). */
const crossings = (edge: FlatEdge, { from, to }: Cut): { readonly share: number; readonly at: number; readonly point: Vec2 }[] => {
  const way = unit2(sub2(to, from));
  const length = length2(sub2(to, from));
  const [a, b] = [sub2(edge.from, from), sub2(edge.to, from)];
  const [offA, offB] = [dot2(a, left2(way)), dot2(b, left2(way))];
  const on = (at: number): boolean => at > -SAME_PLACE && at < length + SAME_PLACE;
  if (edge.bulge === 0) {
    if (offA > 0 === offB > 0) return [];
    const share = offA / (offA - offB);
    const point: Vec2 = add2(edge.from, scale2(sub2(edge.to, edge.from), share));
    const at = dot2(sub2(point, from), way);
    return on(at) ? [{ share, at, point }] : [];
  }
  const { centre, radius } = arcOf(edge.from, edge.to, edge.bulge);
  const off = dot2(sub2(centre, from), left2(way));
  if (Math.abs(off) >= radius) return [];
  const half = Math.sqrt(radius * radius - off * off);
  const middle = dot2(sub2(centre, from), way);
  const sweep = 4 * Math.atan(edge.bulge);
  const start = Math.atan2(edge.from[1] - centre[1], edge.from[0] - centre[0]);
  return [middle - half, middle + half].flatMap((at) => {
    const point: Vec2 = add2(from, scale2(way, at));
    const turned = Math.atan2(point[1] - centre[1], point[0] - centre[0]) - start;
    const share = ((((sweep > 0 ? turned : -turned) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)) / Math.abs(sweep);
    return share < 1 && on(at) ? [{ share, at, point }] : [];
  });
};

const split = (edge: FlatEdge, cuts: readonly Cut[]): FlatEdge[] => {
  const found = cuts.flatMap((cut) => crossings(edge, cut)).sort((p, q) => p.share - q.share);
  const places: { readonly share: number; readonly point: Vec2 }[] = [{ share: 0, point: edge.from }];
  for (const it of found) {
    const last = places[places.length - 1]!.point;
    if (length2(sub2(it.point, last)) > SAME_PLACE && length2(sub2(it.point, edge.to)) > SAME_PLACE) places.push(it);
  }
  if (places.length === 1) return [edge];
  places.push({ share: 1, point: edge.to });
  return places.slice(1).map((next, i): FlatEdge => {
    const before = places[i]!;
    return { from: before.point, to: next.point, bulge: edge.bulge === 0 ? 0 : Math.tan(Math.atan(edge.bulge) * (next.share - before.share)) };
  });
};

/** The stretches of a cut between the corners and edges of `metal` that `keep` says yes to, asked at their middle and their way. */
const stretchesOf = (metal: Metal, cut: Cut, keep: (middle: Vec2, way: Vec2) => boolean): FlatEdge[] => {
  const way = unit2(sub2(cut.to, cut.from));
  const length = length2(sub2(cut.to, cut.from));
  const places: { readonly at: number; readonly point: Vec2 }[] = [
    { at: 0, point: cut.from },
    { at: length, point: cut.to },
    ...metal.edges.flatMap((edge) => {
      const d = sub2(edge.from, cut.from);
      const at = dot2(d, way);
      const corner = Math.abs(dot2(d, left2(way))) < SAME_PLACE && at > -SAME_PLACE && at < length + SAME_PLACE;
      return [...(corner ? [{ at, point: edge.from }] : []), ...crossings(edge, cut)];
    }),
  ].sort((p, q) => p.at - q.at);
  const apart: typeof places = [];
  for (const it of places) {
    // of two that are one place the corner of the outline, wherever it came from, is as good as the other
    if (apart.length === 0 || it.at - apart[apart.length - 1]!.at > SAME_PLACE) apart.push(it);
  }
  return apart.slice(1).flatMap((next, i): FlatEdge[] => {
    const before = apart[i]!;
    return keep(add2(cut.from, scale2(way, (before.at + next.at) / 2)), way) ? [{ from: before.point, to: next.point, bulge: 0 }] : [];
  });
};

/** The stretches of a cut that have metal on both of its sides, as directed edges along it. */
export const throughMetal = (metal: Metal, cut: Cut): FlatEdge[] =>
  stretchesOf(metal, cut, (middle, way) => {
    const across = scale2(left2(way), BESIDE);
    return metal.inside(add2(middle, across)) && metal.inside(sub2(middle, across));
  });

/** What of a cut lies outside of some other metal. */
export const outside = (metal: Metal, cut: Cut): Cut[] => stretchesOf(metal, cut, (middle) => !metal.inside(middle)).map(({ from, to }) => ({ from, to }));

/** Where a cut ends on another, that one is parted too. */
const partedByEnds = (edges: readonly FlatEdge[]): FlatEdge[] => {
  const ends = edges.flatMap(({ from, to }) => [from, to]);
  return edges.flatMap((edge) => {
    const way = unit2(sub2(edge.to, edge.from));
    const length = length2(sub2(edge.to, edge.from));
    const places = ends
      .map((point) => ({ point, at: dot2(sub2(point, edge.from), way), off: Math.abs(dot2(sub2(point, edge.from), left2(way))) }))
      .filter(({ at, off }) => off < SAME_PLACE && at > SAME_PLACE && at < length - SAME_PLACE)
      .sort((p, q) => p.at - q.at)
      .map(({ point }) => point);
    return [...places, edge.to].map((to, i): FlatEdge => ({ from: i === 0 ? edge.from : places[i - 1]!, to, bulge: 0 }));
  });
};

/** A piece of metal: its outline and its holes. */
export interface Piece {
  readonly outline: Contour;
  readonly holes: readonly Contour[];
}

/** The metal cut into pieces; null where the cuts leave a loose end (the metal's own outline does not close). */
export const cutMetal = (metal: Metal, cuts: readonly Cut[]): readonly Piece[] | null => {
  const chained = chainLoops([
    ...metal.edges.flatMap((edge) => split(edge, cuts)),
    ...partedByEnds(cuts.flatMap((cut) => throughMetal(metal, cut))).flatMap((edge) => [edge, { from: edge.to, to: edge.from, bulge: 0 }]),
  ]);
  if ('looseEnd' in chained) return null;
  const outlines = chained.loops
    .map((outline) => ({ outline, area: signedArea(outline), holes: [] as Contour[], ring: flatten(outline, CHORD) }))
    .filter(({ area }) => area > 0)
    .sort((p, q) => p.area - q.area);
  for (const hole of chained.loops) {
    if (signedArea(hole) >= 0) continue;
    const { from, to } = edgesOf(hole)[0]!;
    // a hole's corner may lie on the outline, the middle of its first edge (metal to its left) hardly does
    const way = sub2(to, from);
    const point: Vec2 = hole[0]!.bulge === 0 ? add2(scale2(add2(from, to), 0.5), scale2(left2(unit2(way)), BESIDE)) : from;
    outlines.find(({ ring }) => within(ring, point))?.holes.push(hole);
  }
  return outlines;
};

export const pieceArea = ({ outline, holes }: Piece): number => signedArea(outline) + holes.reduce((sum, hole) => sum + signedArea(hole), 0);

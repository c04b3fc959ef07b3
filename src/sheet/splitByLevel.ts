import { type Contour, type Vec2, arcOf } from '../geometry/index.js';
import type { FlatEdge } from './flatPieces.js';

/** Where along an edge (0 to 1 of its length, arcs by their angle) it passes the level y = 0, its ends left out. */
const passes = ({ from, to, bulge }: FlatEdge): number[] => {
  if (bulge === 0) return from[1] < 0 === to[1] < 0 ? [] : [from[1] / (from[1] - to[1])];
  const { centre, radius } = arcOf(from, to, bulge);
  if (Math.abs(centre[1]) >= radius) return [];
  const sweep = 4 * Math.atan(bulge);
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const reach = Math.sqrt(radius * radius - centre[1] * centre[1]);
  return [-reach, reach]
    .map((x) => {
      const turned = Math.sign(sweep) * (Math.atan2(-centre[1], x) - start);
      return (((turned % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)) / Math.abs(sweep);
    })
    .filter((share) => share > 0 && share < 1)
    .sort((a, b) => a - b);
};

/** The point at a share of an edge. */
const at = ({ from, to, bulge }: FlatEdge, share: number): Vec2 => {
  if (bulge === 0) return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
  const { centre, radius } = arcOf(from, to, bulge);
  const angle = Math.atan2(from[1] - centre[1], from[0] - centre[0]) + 4 * Math.atan(bulge) * share;
  return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
};

export interface Split {
  /** Edges over and under the level, in the contour's own run; arcs stay arcs. */
  readonly over: readonly FlatEdge[];
  readonly under: readonly FlatEdge[];
  /** x of the places where the contour passes the level, in ascending order: an even number. */
  readonly at: readonly number[];
}

/** Cuts a contour where it passes the level y = 0. */
export const splitByLevel = (contour: Contour): Split => {
  const [over, under, places]: [FlatEdge[], FlatEdge[], number[]] = [[], [], []];
  contour.forEach((v, i) => {
    const next = contour[(i + 1) % contour.length]!;
    const edge: FlatEdge = { from: [v.x, v.y], to: [next.x, next.y], bulge: v.bulge };
    const shares = [0, ...passes(edge), 1];
    for (let k = 0; k + 1 < shares.length; k++) {
      const [s0, s1] = [shares[k]!, shares[k + 1]!];
      // a cut lies on the level exactly
      const cut = (share: number, end: Vec2 | undefined): Vec2 => end ?? [at(edge, share)[0], 0];
      const piece: FlatEdge = {
        from: cut(s0, s0 === 0 ? edge.from : undefined),
        to: cut(s1, s1 === 1 ? edge.to : undefined),
        bulge: edge.bulge === 0 ? 0 : Math.tan((Math.atan(edge.bulge) * (s1 - s0))),
      };
      (at(edge, (s0 + s1) / 2)[1] > 0 ? over : under).push(piece);
      if (s1 !== 1) places.push(piece.to[0]);
    }
  });
  return { over, under, at: places.sort((a, b) => a - b) };
};

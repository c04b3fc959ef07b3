import { type Contour } from '../geometry/index.js';

/** A bend's curved metal as triangles over (u, f) on both faces: `side` +1 is the A face, -1 the B face. */
export interface ZoneMesh {
  readonly vertices: readonly { readonly u: number; readonly f: number; readonly side: 1 | -1 }[];
  readonly triangles: readonly (readonly [number, number, number])[];
  /** u half way between the least and the greatest. */
  readonly middle: number;
}

/** Places along the arc nearer than this are one: a share of the arc, far below what can be cut. */
const SAME = 1e-9;

interface Edge {
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
}

interface Piece {
  readonly left0: number;
  readonly right0: number;
  readonly left1: number;
  readonly right1: number;
}

const levelsOf = (zone: readonly Contour[], strips: number): number[] => {
  const all = Array.from({ length: strips + 1 }, (_, k) => k / strips);
  for (const contour of zone) for (const v of contour) all.push(v.y);
  all.sort((a, b) => a - b);
  return all.filter((f, k) => k === 0 || f - all[k - 1]! > SAME);
};

/** u where the edge crosses the level; an end that lies on it is taken as it is, so that neighbours agree exactly. */
const crossing = (edge: Edge, f: number): number => {
  if (Math.abs(edge.from.y - f) <= SAME) return edge.from.x;
  if (Math.abs(edge.to.y - f) <= SAME) return edge.to.x;
  const [low, high] = edge.from.y < edge.to.y ? [edge.from, edge.to] : [edge.to, edge.from];
  return low.x + ((high.x - low.x) * (f - low.y)) / (high.y - low.y);
};

/** The metal between two neighbouring levels, from left to right. Metal lies to the left of every contour. */
const piecesBetween = (edges: readonly Edge[], f0: number, f1: number): Piece[] => {
  const middle = (f0 + f1) / 2;
  const crossed = edges
    .filter((e) => e.from.y > middle !== e.to.y > middle)
    .map((e) => ({ u0: crossing(e, f0), u1: crossing(e, f1), winding: e.to.y > e.from.y ? 1 : -1 }))
    .sort((a, b) => a.u0 + a.u1 - b.u0 - b.u1);
  const pieces: Piece[] = [];
  let winding = 0;
  let left = crossed[0];
  for (const here of crossed) {
    const before = winding;
    // going right, an edge that runs down enters the metal of a counter-clockwise outline
    winding -= here.winding;
    if (before <= 0 && winding > 0) left = here;
    else if (before > 0 && winding <= 0 && left !== undefined) {
      pieces.push({ left0: left.u0, right0: here.u0, left1: left.u1, right1: here.u1 });
    }
  }
  return pieces;
};

const key = (u: number): number => Math.round(u * 1e7);

/**
 * The zone cut along `strips` equal shares of the arc and at the level of every corner. Each piece between two levels
 * is a quadrilateral with two sides along u, so that the same triangles stay a proper skin at every bend angle.
 */
export const zoneMesh = (zone: readonly Contour[], strips: number): ZoneMesh => {
  const edges: Edge[] = zone.flatMap((c) => c.map((v, i) => ({ from: v, to: c[(i + 1) % c.length]! })));
  const levels = levelsOf(zone, strips);
  const bands = levels.slice(1).map((f1, k) => piecesBetween(edges, levels[k]!, f1));
  const breaks = levels.map((_, k) => {
    const found = new Map<number, number>();
    for (const p of bands[k - 1] ?? []) for (const u of [p.left1, p.right1]) found.set(key(u), u);
    for (const p of bands[k] ?? []) for (const u of [p.left0, p.right0]) found.set(key(u), u);
    return [...found.values()].sort((a, b) => a - b);
  });

  const vertices: { u: number; f: number; side: 1 | -1 }[] = [];
  const triangles: (readonly [number, number, number])[] = [];
  const known = new Map<string, number>();
  const at = (level: number, u: number, side: 1 | -1): number => {
    const name = `${level}/${key(u)}/${side}`;
    let index = known.get(name);
    if (index === undefined) {
      index = vertices.push({ u, f: levels[level]!, side }) - 1;
      known.set(name, index);
    }
    return index;
  };
  const face = (a: readonly [number, number], b: readonly [number, number], c: readonly [number, number]): void => {
    triangles.push([at(...a, 1), at(...b, 1), at(...c, 1)]);
    triangles.push([at(...a, -1), at(...c, -1), at(...b, -1)]);
  };
  /** The skin's edge from `a` to `b`, the metal on its left. */
  const wall = (a: readonly [number, number], b: readonly [number, number]): void => {
    triangles.push([at(...a, -1), at(...b, -1), at(...b, 1)]);
    triangles.push([at(...a, -1), at(...b, 1), at(...a, 1)]);
  };
  const covered = levels.map(() => new Map<string, { readonly from: number; readonly to: number; sides: number }>());
  const cover = (level: number, from: number, to: number, side: 1 | -1): void => {
    const name = `${key(from)}/${key(to)}`;
    const seen = covered[level]!.get(name);
    if (seen === undefined) covered[level]!.set(name, { from, to, sides: side });
    else seen.sides += side;
  };

  bands.forEach((pieces, k) => {
    for (const p of pieces) {
      const within = (level: number, left: number, right: number): number[] =>
        breaks[level]!.filter((u) => key(u) >= key(left) && key(u) <= key(right));
      const [low, high] = [within(k, p.left0, p.right0), within(k + 1, p.left1, p.right1)];
      for (let i = 0, j = 0; i + 1 < low.length || j + 1 < high.length; ) {
        const lowNext = low[i + 1];
        const highNext = high[j + 1];
        if (highNext === undefined || (lowNext !== undefined && lowNext <= highNext)) {
          face([k, low[i]!], [k, lowNext!], [k + 1, high[j]!]);
          cover(k, low[i]!, lowNext!, 1);
          i++;
        } else {
          face([k, low[i]!], [k + 1, highNext], [k + 1, high[j]!]);
          cover(k + 1, high[j]!, highNext, -1);
          j++;
        }
      }
      wall([k, p.right0], [k + 1, p.right1]);
      wall([k + 1, p.left1], [k, p.left0]);
    }
  });
  covered.forEach((spans, level) => {
    for (const { from, to, sides } of spans.values()) {
      // metal above only: the contour runs to +u; metal below only: to -u
      if (sides > 0) wall([level, from], [level, to]);
      else if (sides < 0) wall([level, to], [level, from]);
    }
  });
  const us = vertices.map((v) => v.u);
  return { vertices, triangles, middle: (Math.min(...us) + Math.max(...us)) / 2 };
};

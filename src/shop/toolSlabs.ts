import { type Contour, type Vec2, type Vertex, arcOf, vertex } from '../geometry/index.js';
import type { Segment, Tool } from './tool.js';

/** Part of a segment along the bed, mm from its end at the operator's left, and its cross-section as drawn. */
export interface ToolSlab {
  readonly from: number;
  readonly to: number;
  readonly profile: Contour;
}

const FULL_TURN = 2 * Math.PI;

/** A contour's edge cut where it passes the height `up`; each piece by the vertex that starts it, with its middle's height. */
const cutEdge = (v: Vertex, next: Vertex, up: number): { start: Vertex; middle: number }[] => {
  if (v.bulge === 0) {
    const share = (up - v.y) / (next.y - v.y);
    if (!(share > 0 && share < 1)) return [{ start: v, middle: (v.y + next.y) / 2 }];
    const x = v.x + (next.x - v.x) * share;
    return [
      { start: v, middle: (v.y + up) / 2 },
      { start: vertex(x, up), middle: (up + next.y) / 2 },
    ];
  }
  const { centre, radius } = arcOf([v.x, v.y], [next.x, next.y], v.bulge);
  const sweep = 4 * Math.atan(v.bulge);
  const begin = Math.atan2(v.y - centre[1], v.x - centre[0]);
  const sine = (up - centre[1]) / radius;
  const turned =
    Math.abs(sine) >= 1
      ? []
      : [Math.asin(sine), Math.PI - Math.asin(sine)]
          .map((a) => ((((a - begin) * Math.sign(sweep)) % FULL_TURN) + FULL_TURN) % FULL_TURN)
          .filter((a) => a > 0 && a < Math.abs(sweep))
          .sort((a, b) => a - b);
  const stops = [0, ...turned, Math.abs(sweep)];
  return stops.slice(0, -1).map((from, i) => {
    const to = stops[i + 1]!;
    const point = (a: number): Vec2 => {
      const angle = begin + a * Math.sign(sweep);
      return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
    };
    const start: Vec2 = i === 0 ? [v.x, v.y] : [point(from)[0], up];
    return {
      start: vertex(start[0], start[1], Math.tan(((to - from) * Math.sign(sweep)) / 4)),
      middle: point((from + to) / 2)[1],
    };
  });
};

/** How often the outline passes the height `up`. */
export const crossingsAt = (contour: Contour, up: number): number => {
  const middles = contour.flatMap((v, i) => cutEdge(v, contour[(i + 1) % contour.length]!, up)).map((p) => p.middle);
  return middles.filter((m, i) => m > up !== middles[(i + 1) % middles.length]! > up).length;
};

/** The part of a cross-section under (or over) the height `up`, which its outline must pass exactly twice. */
export const cutProfile = (contour: Contour, up: number, keep: 'under' | 'over'): Contour => {
  const pieces = contour.flatMap((v, i) => cutEdge(v, contour[(i + 1) % contour.length]!, up));
  const kept = pieces.map((p) => p.middle > up === (keep === 'over'));
  return pieces.flatMap((p, i) => {
    if (kept[i]) return [p.start];
    const follows = kept[(i + pieces.length - 1) % pieces.length];
    return follows ? [vertex(p.start.x, p.start.y)] : [];
  });
};

/**
 * A segment as slabs along the bed, from its end at the operator's left: one for a plain segment; for an ear segment
 * the body, and beside it the foot with the profile only up to its height (of a die: down to it).
 */
export const toolSlabs = (tool: Tool, segment: Segment): readonly ToolSlab[] => {
  const { length, ear } = segment;
  if (ear === undefined) return [{ from: 0, to: length, profile: tool.profile }];
  const foot =
    tool.kind === 'punch'
      ? cutProfile(tool.profile, ear.footHeight, 'under')
      : cutProfile(tool.profile, -ear.footHeight, 'over');
  return ear.hand === 'left'
    ? [
        { from: 0, to: ear.reach, profile: foot },
        { from: ear.reach, to: length, profile: tool.profile },
      ]
    : [
        { from: 0, to: length - ear.reach, profile: tool.profile },
        { from: length - ear.reach, to: length, profile: foot },
      ];
};

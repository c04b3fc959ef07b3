import { allowanceByRule } from '../forming/index.js';
import { type Contour, left2, scale2, sub2, unit2, vertex } from '../geometry/index.js';
import { clipZone } from './clipZone.js';
import { RELIEF, moveOnLine } from './moveOnLine.js';
import type { Bend, Feature, Line, Part, Plate } from './part.js';
import { type Result, done, refused } from './result.js';

const RADIANS = Math.PI / 180;

/** A contour with its axes exchanged; it runs the other way round. */
const exchanged = (contour: Contour): Contour => [...contour].reverse().map((v) => vertex(v.y, v.x));

/** The part of a zone between two shares of its arc, the share counted from 0 to 1 anew. */
const band = (zone: readonly Contour[], from: number, to: number): readonly Contour[] =>
  clipZone(zone.map(exchanged), from, to).map(exchanged).map((c) => c.map((v) => vertex(v.x, v.y / (to - from))));

/** Is the zone one piece of metal at every share of its arc, without holes? */
const isWhole = (zone: readonly Contour[]): boolean => {
  if (zone.length !== 1) return false;
  const ys = zone[0]!.map((v) => v.y);
  const turns = ys.filter((y, i) => {
    const [before, after] = [ys[(i + ys.length - 1) % ys.length]!, ys[(i + 1) % ys.length]!];
    return (y > before && y >= after) || (y < before && y <= after);
  });
  return turns.length <= 2;
};

/** mm: how far the rounded corners between facets stand out over the arc that the facets touch in their middles. */
export const facetHeight = (insideRadius: number, cornerRadius: number, turned: number): number =>
  (insideRadius - cornerRadius) * (1 / Math.cos((turned / 2) * RADIANS) - 1);

/** mm of flat between the tangent lines of two hits. */
const facetWidth = (insideRadius: number, cornerRadius: number, turned: number): number =>
  2 * (insideRadius - cornerRadius) * Math.tan((turned / 2) * RADIANS);

/** A bend's line moved to its left. mm */
const moved = ({ from, to }: Line, by: number): Line => {
  const [x, y] = scale2(left2(unit2(sub2(to, from))), by);
  return { from: [from[0] + x, from[1] + y], to: [to[0] + x, to[1] + y] };
};

/**
 * The part with a bend of large radius made in `count` equal hits of a V: narrow plates between small bends of inside radius
 * `cornerRadius` (mm), touching the drawn arc in their middles. What lies beyond the bend keeps its place. The bend's index becomes
 * the first hit's, further hits and the plates between them come after all others; a hit is named after its bend, `b2.1` and so on.
 */
export const inHits = (part: Part, index: number, count: number, cornerRadius: number): Result<Part> => {
  const bend = part.bends[index]!;
  if (!isWhole(bend.zone)) return refused('flat pattern open', `Bend ${bend.id} has cut-outs within its arc: it is not divided into hits.`, { bends: [bend.id] });
  const turned = bend.bendAngle / count;
  const width = facetWidth(bend.insideRadius, cornerRadius, turned);
  if (!(width > 0)) return refused('flat pattern open', `Bend ${bend.id} of inside radius ${bend.insideRadius} mm leaves no flat between hits of radius ${cornerRadius} mm.`, { bends: [bend.id] });
  // only for where holes and slanted ends of the zone come to lie: a mean K will do. Common practice, no source
  const arc = allowanceByRule({ name: 'K-factor', k: 0.44 }, cornerRadius, part.thickness, turned);
  const half = width / (width + arc) / 2;
  const line = bend.sides[0].line;
  const length = Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);
  const plates: Plate[] = [...part.plates];
  const ends = bend.sides.map((side, which) => {
    const by = (which === 0 ? 1 : -1) * (width / 2);
    const { outline, holes } = plates[side.plate]!;
    const move = (c: Contour): Contour => moveOnLine(c, side.line, by, Math.max(width, part.thickness, 2 * RELIEF), false);
    plates[side.plate] = { outline: move(outline), holes };
    return { plate: side.plate, line: moved(side.line, by) };
  });
  const across = (y: number): Line => ({ from: [0, y], to: [length, y] });
  const facets = Array.from({ length: count - 1 }, (_, k) => {
    const [outline] = band(bend.zone, (k + 1 - half) / count, (k + 1 + half) / count);
    return plates.push({ outline: outline!.map((v) => vertex(v.x, v.y * width)), holes: [] }) - 1;
  });
  const hits = Array.from({ length: count }, (_, k): Bend => ({
    id: `${bend.id}.${k + 1}`, kind: 'bend', bendAngle: turned, direction: bend.direction, insideRadius: cornerRadius,
    hit: { of: bend.id, number: k + 1, count, radius: bend.insideRadius },
    zone: band(bend.zone, (k + half) / count, (k + 1 - half) / count),
    sides: [
      k === 0 ? ends[0]! : { plate: facets[k - 1]!, line: across(width) },
      k === count - 1 ? ends[1]! : { plate: facets[k]!, line: across(0) },
    ],
  }));
  const bends = part.bends.map((b, i) => (i === index ? hits[0]! : b));
  const last = bends.length + count - 2;
  const picked = (f: Feature): Feature => (f.kind === 'corner' && f.bend === index && f.plate === bend.sides[1].plate && count > 1 ? { ...f, bend: last } : f);
  return done({
    ...part, plates, bends: [...bends, ...hits.slice(1)],
    ...(part.dimensions ? { dimensions: part.dimensions.map((d) => ({ ...d, between: [picked(d.between[0]), picked(d.between[1])] as const })) } : {}),
  });
};

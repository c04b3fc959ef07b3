import { type Contour, type Vec2, add2, bounds, dot2, flatten, left2, length2, scale2, sub2, unit2, vertex } from '../../geometry/index.js';
import { overlapArea } from '../recognise/region.js';
import { CURVE_CHORD } from '../tolerances.js';
import type { DrawnBend } from './bendLines.js';
import { type Cut, type Metal, type Piece, cutMetal, metalOf, outside, pieceArea, throughMetal, within } from './region.js';

/** The strip of metal that becomes one bend, cut from the flat. */
export interface Zone {
  /** Which of the bend lines. */
  readonly line: number;
  readonly piece: Piece;
  /** mm along the bend line from its start: where the metal on the line begins and ends. */
  readonly span: readonly [number, number];
  /** A point of the line in this strip's metal. */
  readonly middle: Vec2;
  /** mm of metal cut off beside the strip at its start and its end, that runs on past the bend without a relief. */
  readonly slit: readonly [boolean, boolean];
  readonly cuts: readonly Cut[];
  /** mm2 */
  readonly area: number;
}

export interface Zones {
  readonly zones: readonly Zone[];
  /** Strips that meet over a corner (mm2 in common): it is left to the first of the two. */
  readonly corners: readonly { readonly lines: readonly [number, number]; readonly by: number }[];
}

export type ZoneFailure =
  | { readonly code: 'bend line ends in metal'; readonly line: number; readonly at: Vec2; readonly by: number }
  | { readonly code: 'bends too close'; readonly lines: readonly [number, number]; readonly by: number };

/** Share of the metal on a line that must be drawn over; where a line is drawn at both ends of it alone, this many mm of each. */
const DRAWN = 0.5;
const TICK = 2;
/** mm of metal that a line may run into by drawing before it counts as meant. */
const TOUCHES = 1;
/** mm: an edge this near to a line lies on it. */
const ON_LINE = 1.5e-3;
/** mm2 of two strips in common below which they only touch. */
const SAME_AREA = 1e-3;
/** Share of the smaller strip that two may have in common, at a corner relieved too tightly, and still be two bends. Common practice, no source. */
const CORNER = 0.05;
/** Widths of the strip by which its slanted or rounded end may reach beyond the metal on the bend line. */
const REACH = 1.5;

export const frameOf = ({ from, to }: Pick<DrawnBend, 'from' | 'to'>) => {
  const way = unit2(sub2(to, from));
  return {
    at: (u: number, d: number): Vec2 => add2(from, add2(scale2(way, u), scale2(left2(way), d))),
    place: (p: Vec2): Vec2 => [dot2(sub2(p, from), way), dot2(sub2(p, from), left2(way))],
  };
};

/** Straight edges of a contour that lie on a line of the strip (`u` or `d` constant), in (u, d). */
const edgesOn = (contour: Contour, place: (p: Vec2) => Vec2, which: 0 | 1, value: number): (readonly [Vec2, Vec2])[] => {
  const found: (readonly [Vec2, Vec2])[] = [];
  contour.forEach((v, i) => {
    const next = contour[(i + 1) % contour.length]!;
    const [p, q] = [place([v.x, v.y]), place([next.x, next.y])];
    if (v.bulge === 0 && Math.abs(p[which] - value) < ON_LINE && Math.abs(q[which] - value) < ON_LINE) found.push([p, q]);
  });
  return found;
};

/** The stretches of a bend line that run in metal and are meant, mm along it. */
const stretches = (metal: Metal, bend: DrawnBend, line: number, far: number): { readonly spans: (readonly [number, number])[] } | ZoneFailure => {
  const { at, place } = frameOf(bend);
  const through = throughMetal(metal, { from: at(-far, 0), to: at(far, 0) }).map(({ from, to }) => [place(from)[0], place(to)[0]] as const);
  // corners on the line part a stretch that is one
  const whole: [number, number][] = [];
  for (const [low, high] of through) {
    const last = whole[whole.length - 1];
    if (last !== undefined && low - last[1] < ON_LINE) last[1] = high;
    else whole.push([low, high]);
  }
  const spans: (readonly [number, number])[] = [];
  for (const [low, high] of whole) {
    const parts = bend.spans.map(([a, b]) => [Math.max(a, low), Math.min(b, high)] as const).filter(([a, b]) => b > a);
    if (parts.length === 0) continue;
    const [first, last] = [Math.min(...parts.map((p) => p[0])), Math.max(...parts.map((p) => p[1]))];
    const marks = parts.length > 1 && first - low < TICK && high - last < TICK;
    const drawn = parts.reduce((sum, [a, b]) => sum + b - a, 0);
    if (marks || drawn >= DRAWN * (high - low)) spans.push([low, high]);
    else if (drawn > TOUCHES) {
      const inside = first - low > high - last ? first : last;
      return { code: 'bend line ends in metal', line, at: at(inside, 0), by: Math.max(first - low, high - last) };
    }
  }
  return { spans };
};

/** The piece of metal about a point of a bend line, cut out from `ends[0]` to `ends[1]` along it and half a width to both sides. */
const pieceAt = (metal: Metal, bend: DrawnBend, ends: readonly [number, number], half: number, middle: Vec2): Piece | undefined => {
  const { at } = frameOf(bend);
  const corners = [at(ends[0], -half), at(ends[1], -half), at(ends[1], half), at(ends[0], half)];
  const cuts = corners.map((from, i): Cut => ({ from, to: corners[(i + 1) % 4]! }));
  return cutMetal(metal, cuts)?.find(({ outline }) => within(flatten(outline, CURVE_CHORD), middle));
};

/**
 * The strip about the first of some stretches of a bend line, and those that follow where metal within the strip's width runs on to
 * them beside a hole or a notch on the line; null where nothing closed is found.
 */
const zoneAt = (metal: Metal, bend: DrawnBend, line: number, spans: readonly (readonly [number, number])[], width: number): { readonly zone: Zone | null; readonly taken: number } => {
  const { at, place } = frameOf(bend);
  const half = width / 2;
  let span = spans[0]!;
  const middle = at((span[0] + span[1]) / 2, 0);
  const reach = (): [number, number] => [span[0] - REACH * width, span[1] + REACH * width];
  let ends = reach();
  let piece = pieceAt(metal, bend, ends, half, middle);
  let taken = 1;
  for (; piece !== undefined && taken < spans.length; taken++) {
    const [low, high] = spans[taken]!;
    // in the metal of the next stretch, as near to its beginning as this strip reaches
    if (!within(flatten(piece.outline, CURVE_CHORD), at(Math.min((low + high) / 2, low + TOUCHES / 4), 0))) break;
    span = [span[0], high];
    ends = reach();
    piece = pieceAt(metal, bend, ends, half, middle);
  }
  const slit: [boolean, boolean] = [false, false];
  // at most thrice: as drawn, and with either end cut off where metal runs on
  for (let turn = 0; turn < 3 && piece !== undefined; turn++) {
    const { outline } = piece;
    const runsOn = ([0, 1] as const).filter((end) => !slit[end] && edgesOn(outline, place, 0, ends[end]).some(([p, q]) => Math.abs(p[1] - q[1]) > ON_LINE));
    if (runsOn.length === 0) {
      const sides = ([-half, half] as const).flatMap((d) => edgesOn(outline, place, 1, d).map(([p, q]): Cut => ({ from: at(p[0], d), to: at(q[0], d) })));
      const shut = ([0, 1] as const).flatMap((end) =>
        slit[end] ? edgesOn(outline, place, 0, ends[end]).map(([p, q]): Cut => ({ from: at(ends[end], p[1]), to: at(ends[end], q[1]) })) : [],
      );
      return { zone: { line, piece, span, middle, slit, cuts: [...sides, ...shut], area: pieceArea(piece) }, taken };
    }
    for (const end of runsOn) {
      ends[end] = span[end];
      slit[end] = true;
    }
    piece = pieceAt(metal, bend, ends, half, middle);
  }
  return { zone: null, taken };
};

/** The metal with those holes alone that a strip along a line can meet: a perforated sheet has thousands of others. */
const nearTo = (metal: Metal, bend: DrawnBend, width: number): Metal => {
  const { place } = frameOf(bend);
  const [outline, ...holes] = metal.contours;
  const meets = (hole: Contour): boolean => {
    const [[x0, y0], [x1, y1]] = bounds([hole]);
    const across = ([[x0, y0], [x1, y0], [x1, y1], [x0, y1]] as const).map((p) => place(p)[1]);
    return Math.min(...across) < width && Math.max(...across) > -width;
  };
  return outline === undefined ? metal : metalOf([outline, ...holes.filter(meets)]);
};

/** The strips of one bend line. */
const zonesOn = (metal: Metal, bend: DrawnBend, line: number, spans: readonly (readonly [number, number])[], width: number): Zone[] => {
  const zones: Zone[] = [];
  for (let k = 0; k < spans.length; ) {
    const { zone, taken } = zoneAt(metal, bend, line, spans.slice(k), width);
    if (zone !== null) zones.push(zone);
    k += taken;
  }
  return zones;
};

/** Strips of metal about all bend lines, `widths` mm wide. */
export const zonesOf = (metal: Metal, bends: readonly DrawnBend[], widths: readonly number[]): Zones | ZoneFailure => {
  const [low, high] = bounds(metal.contours);
  const far = 2 * length2(sub2(high, low)) + Math.max(...bends.map(({ from }) => length2(sub2(from, low))), 0);
  const zones: Zone[] = [];
  for (const [line, bend] of bends.entries()) {
    const near = nearTo(metal, bend, widths[line]!);
    const found = stretches(near, bend, line, far);
    if ('code' in found) return found;
    zones.push(...zonesOn(near, bend, line, found.spans, widths[line]!));
  }
  const corners: Zones['corners'][number][] = [];
  const rings = zones.map(({ piece }) => [piece.outline, ...piece.holes].map((contour) => flatten(contour, CURVE_CHORD)));
  for (let i = 0; i < zones.length; i++) {
    for (let k = i + 1; k < zones.length; k++) {
      const [a, b] = [bounds([zones[i]!.piece.outline]), bounds([zones[k]!.piece.outline])];
      if (a[0][0] > b[1][0] || b[0][0] > a[1][0] || a[0][1] > b[1][1] || b[0][1] > a[1][1]) continue;
      const by = overlapArea(rings[i]!, rings[k]!);
      if (by <= SAME_AREA) continue;
      const [one, other] = [zones[i]!, zones[k]!];
      const lines = [one.line, other.line] as const;
      if (by > CORNER * Math.min(one.area, other.area)) return { code: 'bends too close', lines, by };
      corners.push({ lines, by });
      const first = metalOf([one.piece.outline, ...one.piece.holes]);
      zones[k] = { ...other, cuts: other.cuts.flatMap((cut) => outside(first, cut)), area: other.area - by };
    }
  }
  return { zones, corners };
};

/** The strip unrolled: (u, f), u from `start` mm along the line on, f the share across it; straight edges. */
export const unrolled = (zone: Zone, bend: DrawnBend, width: number, start: number): readonly Contour[] => {
  const { place } = frameOf(bend);
  const snap = (f: number): number => (Math.abs(f) * width < ON_LINE ? 0 : Math.abs(f - 1) * width < ON_LINE ? 1 : f);
  return [zone.piece.outline, ...zone.piece.holes].map((contour) =>
    flatten(contour, CURVE_CHORD).map((p) => {
      const [u, d] = place(p);
      return vertex(u - start, snap(d / width + 0.5));
    }),
  );
};

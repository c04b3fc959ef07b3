import { type Contour, type Vec2, add2, cross2, dot2, left2, length2, scale2, signedArea, sub2, unit2, vertex } from '../geometry/index.js';
import { clipZone } from './clipZone.js';
import { crossesItself } from './crossesItself.js';
import { inLine } from './inLine.js';
import type { Bend, Line, Part, Plate } from './part.js';
import { type Result, done, refused } from './result.js';

const RADIANS = Math.PI / 180;

/** Over this bend angle the mould lines run off to nowhere and a drawing does not measure to them: radius changes, lines stay. */
const NO_MOULD_LINE = 150;
/** A corner this near to a bend's tangent line lies on it (mm): readers round to 1e-6, nobody draws an edge so near on purpose. */
const ON_LINE = 1e-3;
/** Width (mm) of the slit cut beside a bend that reaches further into its plate than the edge beside it: a laser's kerf. Common practice, no source. */
const RELIEF = 0.2;
/** An edge at less than this sine to the line (about 17 degrees) would carry its corner too far along: it goes straight. */
const STEEPEST_SLIDE = 0.3;
/** Corners nearer than this (mm) are one. */
const SAME_CORNER = 1e-6;
/** Directions differ by less than this sine when an edge runs on along a tangent line. */
const PARALLEL = 1e-4;

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
const moved = (contour: Contour, line: Line, delta: number, narrow: number, deepens: boolean): Contour => {
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

/** The first and last place (mm along the line) where a straight edge of the plate lies on the line; null if none does. */
const covered = (plate: Plate, line: Line): readonly [number, number] | null => {
  const length = length2(sub2(line.to, line.from));
  let [low, high] = [Infinity, -Infinity];
  for (const contour of [plate.outline, ...plate.holes]) {
    const places = contour.map((v) => inLine(line, point(v)));
    contour.forEach((v, i) => {
      const [p, q] = [places[i]!, places[(i + 1) % contour.length]!];
      if (v.bulge !== 0 || Math.abs(p[1]) > ON_LINE || Math.abs(q[1]) > ON_LINE) return;
      const [from, to] = [Math.max(0, Math.min(p[0], q[0])), Math.min(length, Math.max(p[0], q[0]))];
      if (to - from > ON_LINE) [low, high] = [Math.min(low, from), Math.max(high, to)];
    });
  }
  return low < high ? [low, high] : null;
};

/**
 * Where a plate's corner has moved along a neighbouring bend's line, that bend reaches past its plate: it is shortened
 * to what is left, as a corner relief does in the trade.
 */
const relieved = (before: Part, after: readonly Plate[], bend: Bend, was: Bend): Bend => {
  const length = length2(sub2(bend.sides[0].line.to, bend.sides[0].line.from));
  let [low, high] = [0, length];
  bend.sides.forEach((side, which) => {
    const old = covered(before.plates[side.plate]!, was.sides[which as 0 | 1].line);
    const now = covered(after[side.plate]!, side.line);
    if (old === null || now === null) return;
    if (now[0] - old[0] > ON_LINE) low = Math.max(low, now[0]);
    if (old[1] - now[1] > ON_LINE) high = Math.min(high, now[1]);
  });
  if (low === 0 && high === length) return bend;
  const cut = (line: Line): Line => {
    const u = unit2(sub2(line.to, line.from));
    return { from: add2(line.from, scale2(u, low)), to: add2(line.from, scale2(u, high)) };
  };
  const [side0, side1] = bend.sides;
  return {
    ...bend,
    sides: [
      { plate: side0.plate, line: cut(side0.line) },
      { plate: side1.plate, line: cut(side1.line) },
    ],
    zone: clipZone(bend.zone, low, high),
  };
};

/**
 * The part with the radii that tools form (mm, in the order of the bends), outside mould dimensions kept as drawn: each
 * bend's tangent lines move into its plates (a larger radius) or out of them by (new - old) tan(bend angle / 2), and the
 * outline with them; a shoulder beside the bend narrower than that move, or than the thickness, goes along. Zones keep their extent along the bend, but for a corner that a neighbouring bend has taken. Hems and bend angles over 150 keep their lines.
 * 'inside out' when a plate has not that much flat metal.
 */
export const asFormed = (part: Part, formed: readonly { readonly insideRadius: number }[]): Result<Part> => {
  const plates: Plate[] = [...part.plates];
  const bends = part.bends.map((bend, index) => {
    const insideRadius = formed[index]!.insideRadius;
    const delta = (insideRadius - bend.insideRadius) * Math.tan((bend.bendAngle / 2) * RADIANS);
    const keeps = bend.kind === 'hem' || bend.bendAngle > NO_MOULD_LINE || delta === 0;
    if (keeps) return { ...bend, insideRadius };
    const sides = bend.sides.map((side, which) => {
      // plate 0 lies to the right of its line, plate 1 to the left of its own: into the plate is -v, +v
      const inwards = which === 0 ? -delta : delta;
      const plate = plates[side.plate]!;
      const narrow = Math.max(Math.abs(delta), part.thickness, 2 * RELIEF);
      plates[side.plate] = {
        outline: moved(plate.outline, side.line, inwards, narrow, delta > 0),
        holes: plate.holes.map((hole) => moved(hole, side.line, inwards, narrow, delta > 0)),
      };
      const by = scale2(left2(unit2(sub2(side.line.to, side.line.from))), inwards);
      const shift = (p: Vec2): Vec2 => [p[0] + by[0], p[1] + by[1]];
      return { plate: side.plate, line: { from: shift(side.line.from), to: shift(side.line.to) } };
    });
    return { ...bend, insideRadius, sides: [sides[0]!, sides[1]!] as const };
  });
  for (const [index, plate] of plates.entries()) {
    if (plate === part.plates[index]) continue;
    if (signedArea(plate.outline) > 0 && !crossesItself([plate.outline, ...plate.holes])) continue;
    const at = part.bends.filter((bend) => bend.sides.some((side) => side.plate === index));
    const worst = at.reduce((a, b) => (growth(part, formed, b.id) > growth(part, formed, a.id) ? b : a));
    const by = growth(part, formed, worst.id);
    return refused(
      'inside out',
      `Plate ${index + 1} has no flat metal left when bend ${worst.id} forms with an inside radius of ${formed[part.bends.indexOf(worst)]!.insideRadius.toFixed(2)} mm: its tangent line moves ${by.toFixed(2)} mm into the plate.`,
      { plates: [index], bends: at.map((bend) => bend.id), by },
    );
  }
  return done({ ...part, plates, bends: bends.map((bend, index) => relieved(part, plates, bend, part.bends[index]!)) });
};

/** mm by which the tangent lines of a bend move into its plates. */
const growth = (part: Part, formed: readonly { readonly insideRadius: number }[], id: string): number => {
  const index = part.bends.findIndex((bend) => bend.id === id);
  const bend = part.bends[index]!;
  return (formed[index]!.insideRadius - bend.insideRadius) * Math.tan((bend.bendAngle / 2) * RADIANS);
};

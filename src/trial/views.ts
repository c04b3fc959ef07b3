import {
  type Convex, type Shape, type Solid, type Vec2, type Rigid,
  compose, convexPieces, flatten, hull, invert, moved, prism, scale3, shapeOf, shift,
} from '../geometry/index.js';
import { type Bend, type Developed, acrossBend, arcRuns, bendFrame } from '../sheet/index.js';
import { widthAcross } from './offsetBend.js';
import { CHORD_ERROR, ON_DIE_TOP } from './limits.js';
import { type BranchWalks, type Walk, branchWalks, walks } from './walks.js';

/** The metal of one plate (and the bend it hangs on), seen from a running bend's wing: (along, b, h). */
export interface View {
  readonly plate: number;
  /** Is this the plate next to the running bend? */
  readonly wing: boolean;
  readonly onGaugeSide: boolean;
  /** From the plate's own frame to (along, b, h). */
  readonly pose: Rigid;
  readonly pieces: readonly Piece[];
  /** mm: the largest distance of a corner from the wing's tangent line. */
  readonly reach: number;
  /** Least (b, h), then greatest (b, h). */
  readonly box: readonly [number, number, number, number];
}

/**
 * Views whose poses hang on the same bends: a stretch of the part's tree from one fork to the next. With many arms a part has many
 * folds, but each branch only a few, so what is known of a branch is kept with it.
 */
export interface Branch {
  readonly views: readonly View[];
}

export interface Piece {
  readonly solid: Solid;
  /** The solid's outline along the bed: (b, h). */
  readonly outline: Convex;
  readonly shape: Shape;
  readonly along: readonly [number, number];
  readonly lowest: number;
  /** Does it lie in one plane with the wing, as part of the same flat? */
  readonly flat: boolean;
  /** Is it the first of a made bend's arc, which leaves the lying sheet downwards? It may lie on a die's edge as that sheet does. */
  readonly leavesTop?: true;
}

/** How the bends of one stroke lie in the machine: which side of the first one points to the gauge. */
export interface Seat {
  readonly bends: readonly number[];
  readonly gaugeSide: 0 | 1;
  /** The plate between the two bends of an offset, which belongs to neither wing. */
  readonly web?: number;
  /** A second stroke on the same bends: its questions are others. */
  readonly again?: true;
}

/** +1 when the bend's own direction u runs to the operator's right. */
export const alongSign = (bend: Bend, gaugeSide: 0 | 1): 1 | -1 =>
  (bend.direction === 'A') === (gaugeSide === 1) ? 1 : -1;

/** From the frame of plate `sides[side]` to (along, b, h) of its wing. A proper turn on both sides. */
export const wingFrame = (bend: Bend, gaugeSide: 0 | 1, side: 0 | 1): Rigid => {
  const a = alongSign(bend, gaugeSide);
  const b = gaugeSide === 1 ? 1 : -1;
  const h = bend.direction === 'A' ? 1 : -1;
  const swap: Rigid = { x: [a, 0, 0], y: [0, b, 0], z: [0, 0, h], o: [0, 0, 0] };
  return compose(swap, invert(bendFrame(bend.sides[side].line)));
};

/** The pieces of a plate in its own frame, and of what stands on it. Holes are filled: only outlines strike tools. */
export const platePieces = (sheet: Developed, plate: number): readonly Solid[] => {
  const h = sheet.part.thickness / 2;
  const standing = (sheet.part.formed ?? []).filter((formed) => formed.plate === plate && formed.height > 0);
  return [
    ...convexPieces(flatten(sheet.part.plates[plate]!.outline, CHORD_ERROR)).map((p) => prism(p, -h, h)),
    ...standing.flatMap(({ outline, side, height }) =>
      convexPieces(flatten(outline, CHORD_ERROR)).map((p) => (side === 'A' ? prism(p, h, h + height) : prism(p, -h - height, -h)))),
  ];
};

/** Chords of at most this many degrees stand for the arc of a bend that is made. */
const ARC_STEP = 30;

/** Turned through less than this the arc is taken as level: radians. */
const LEVEL = 1e-9;

/** The metal of a bend's arc at an angle, in the frame of plate `sides[side]`: convex pieces that hold it. */
export const arcPieces = (sheet: Developed, bendIndex: number, angle: number, side: 0 | 1): readonly Solid[] => {
  const bend = sheet.part.bends[bendIndex]!;
  const t = sheet.part.thickness;
  const us = bend.zone.flat().map((v) => v.x);
  const [u0, u1] = us.length > 0 ? [Math.min(...us), Math.max(...us)] : [0, 0];
  if (u1 - u0 <= 0) return [];
  const sections: Vec2[][] = [];
  const ordered = side === 0 ? arcRuns(sheet, bendIndex, angle) : [...arcRuns(sheet, bendIndex, angle)].reverse();
  let [start, heading]: [Vec2, number] = [[0, 0], 0];
  for (const { length, turned, shift } of ordered) {
    const [c, s] = [Math.cos(heading), Math.sin(heading)];
    const [o, before] = [start, heading];
    const place = ([x, y]: Vec2): Vec2 => [o[0] + c * x - s * y, o[1] + s * x + c * y];
    if (turned < LEVEL) {
      sections.push([[0, -t / 2], [length, -t / 2], [length, t / 2], [0, t / 2]].map(([x, y]) => place([x!, y!])));
      start = place([length, 0]);
      continue;
    }
    const middle = length / turned + shift;
    const count = Math.max(1, Math.ceil(turned / ((ARC_STEP * Math.PI) / 180)));
    const step = turned / count;
    const inner = Math.max(0, middle - t / 2);
    const at = (r: number, a: number): Vec2 => place([r * Math.sin(a), middle - r * Math.cos(a)]);
    for (let k = 0; k < count; k++) {
      const [from, to] = [k * step, (k + 1) * step];
      // outside, the tangents at both ends meet: the piece holds the arc and reaches no further than it in their directions
      const corner = at((middle + t / 2) / Math.cos(step / 2), (from + to) / 2);
      sections.push([at(middle + t / 2, from), corner, at(middle + t / 2, to), at(inner, to), at(inner, from)]);
    }
    start = at(middle, turned);
    heading = before + turned;
  }
  const frame = bendFrame(bend.sides[side].line);
  const forward = side === 0 ? 1 : -1;
  const up = bend.direction === 'A' ? 1 : -1;
  // (section x = away from the plate, section y = towards the inside, extrusion = along u)
  const into: Rigid = {
    x: scale3(frame.y, forward),
    y: [0, 0, up],
    z: frame.x,
    o: frame.o,
  };
  return sections.map((s) => moved(prism(hull(s), u0, u1), into));
};

const asPiece = (solid: Solid, thickness: number, ofArc: boolean): Piece => {
  const along = solid.corners.map((p) => p[0]);
  const outline = hull(solid.corners.map((p): Vec2 => [p[1], p[2]]));
  const [lowest, highest] = [Math.min(...outline.map((p) => p[1])), Math.max(...outline.map((p) => p[1]))];
  const [under, over] = [-thickness / 2 - ON_DIE_TOP, thickness / 2 + ON_DIE_TOP];
  const leaves = ofArc && lowest < under && solid.corners.some(([, , h]) => Math.abs(h + thickness / 2) <= ON_DIE_TOP);
  return {
    solid, outline, shape: shapeOf(outline), along: [Math.min(...along), Math.max(...along)], lowest,
    flat: lowest >= under && highest <= over,
    ...(leaves ? { leavesTop: true } : {}),
  };
};

/**
 * How each plate stands from the bend line in the machine: it depends only on the states of the bends between them,
 * so a view is made once for those states and kept, and so is each branch of them. Bends of the same stroke are passed flat:
 * what hangs on them turns with the other wing, whose tangent line lies one flat length further.
 */
export const viewer = (sheet: Developed): ((seat: Seat, angleOf: (bend: number) => number) => readonly Branch[]) => {
  const ways = new Map<number, readonly BranchWalks[]>();
  const plates = new Map<number, readonly Solid[]>();
  const views = new Map<string, View>();
  const branches = new Map<string, Branch>();
  const piecesOf = (plate: number): readonly Solid[] => {
    const known = plates.get(plate) ?? platePieces(sheet, plate);
    plates.set(plate, known);
    return known;
  };
  const viewOf = (seat: Seat, walk: Walk, angleOf: (bend: number) => number): View => {
    const first = seat.bends[0]!;
    const across = walk.hops.findIndex((hop) => seat.bends.includes(hop.bend));
    // over an offset's first bend lies its web, and over the second the other wing
    const stepped = across >= 0 && seat.web !== undefined;
    const solids: Solid[] = [];
    let pose = wingFrame(sheet.part.bends[first]!, seat.gaugeSide, walk.side);
    walk.hops.forEach((hop, i) => {
      const bend = sheet.part.bends[hop.bend]!;
      const angle = i !== across ? angleOf(hop.bend) : 0;
      const near = bend.sides[0].plate === hop.from ? 0 : 1;
      const into = pose;
      if (i === walk.hops.length - 1 && i !== across) solids.push(...arcPieces(sheet, hop.bend, angle, near).map((s) => moved(s, into)));
      const over = acrossBend(sheet, hop.bend, angle);
      pose = compose(pose, near === 0 ? over : invert(over));
    });
    const arcs = solids.length;
    solids.push(...piecesOf(walk.plate).map((s) => moved(s, pose)));
    const startsAtGauge = walk.side === seat.gaugeSide;
    const strip = stepped ? -sheet.allowances[seat.bends[1]!]! - widthAcross(sheet, seat.web!, sheet.part.bends[first]!.sides[walk.side].line) : sheet.allowances[first]!;
    const settled = across < 0 ? solids : solids.map((s) => moved(s, shift([0, startsAtGauge ? strip : -strip, 0])));
    const pieces = settled.map((s, i) => asPiece(s, sheet.part.thickness, i < arcs));
    const [bs, heights] = [pieces.flatMap((p) => p.outline.map((q) => q[0])), pieces.flatMap((p) => p.outline.map((q) => q[1]))];
    return {
      plate: walk.plate,
      wing: walk.hops.length === across + 1,
      onGaugeSide: stepped ? startsAtGauge : (across < 0) === startsAtGauge,
      pose: across < 0 ? pose : compose(shift([0, startsAtGauge ? strip : -strip, 0]), pose),
      pieces,
      reach: Math.max(...pieces.flatMap((p) => p.outline.map((q) => Math.hypot(q[0], q[1])))),
      box: [Math.min(...bs), Math.min(...heights), Math.max(...bs), Math.max(...heights)],
    };
  };
  const kept = <T>(map: Map<string, T>, key: string, make: () => T): T => {
    let known = map.get(key);
    if (known === undefined) map.set(key, (known = make()));
    return known;
  };
  return (seat, angleOf) => {
    const first = seat.bends[0]!;
    let all = ways.get(first);
    if (!all) ways.set(first, (all = branchWalks(walks(sheet, first).filter(({ plate }) => plate !== seat.web))));
    const seated = `${seat.bends.join('+')}${seat.again ? ' again' : ''}|${seat.gaugeSide}`;
    const statesOf = (bends: readonly number[]): string => bends.map((b) => Math.round(angleOf(b) * 10)).join();
    return all.map((branch, i) => kept(branches, `${seated}|${i}|${statesOf(branch.bends)}`, () => ({
      views: branch.walks.map((walk) => kept(views, `${seated}|${walk.plate}|${statesOf(walk.hops.map((hop) => hop.bend))}`, () => viewOf(seat, walk, angleOf))),
    })));
  };
};

import { type Rigid, type Vec2, apply, compose } from '../geometry/index.js';
import { bendFrame } from './bendFrame.js';
import type { Developed } from './developed.js';
import { fold } from './fold.js';
import { inLine } from './inLine.js';
import type { Line } from './part.js';

/** A directed edge of the flat pattern: metal to its left. */
export interface FlatEdge {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly bulge: number;
}

/** A plate or a bend's zone laid in the plane of plate 0, with the edges that are left when neighbours are joined. */
export interface FlatPiece {
  readonly name: string;
  readonly plate?: number;
  readonly bend?: string;
  /** All of its own edges, joined or not. */
  readonly edges: readonly FlatEdge[];
  /** Those that no neighbour cancels. */
  readonly free: readonly FlatEdge[];
}

/** A plate's edge lies on a tangent line when both its ends are this near (mm): far above rounding, far below a laser's kerf. */
const ON_LINE = 1e-3;

interface Span {
  readonly low: number;
  readonly high: number;
  /** +1 along the line, -1 against it. */
  readonly way: 1 | -1;
}

const contourEdges = (contours: readonly (readonly { readonly x: number; readonly y: number; readonly bulge: number }[])[]): FlatEdge[] =>
  contours.flatMap((contour) =>
    contour.map((v, i): FlatEdge => {
      const next = contour[(i + 1) % contour.length]!;
      return { from: [v.x, v.y], to: [next.x, next.y], bulge: v.bulge };
    }),
  );

/** Splits edges into spans on the line and the rest. */
const onLine = (edges: readonly FlatEdge[], line: Line) => {
  const spans: Span[] = [];
  const rest: FlatEdge[] = [];
  const length = Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);
  for (const edge of edges) {
    const [p, q] = [inLine(line, edge.from), inLine(line, edge.to)];
    const [low, high] = [Math.min(p[0], q[0]), Math.max(p[0], q[0])];
    const lies = edge.bulge === 0 && Math.abs(p[1]) < ON_LINE && Math.abs(q[1]) < ON_LINE && high - low > ON_LINE;
    if (lies && high > ON_LINE && low < length - ON_LINE) spans.push({ low, high, way: q[0] > p[0] ? 1 : -1 });
    else rest.push(edge);
  }
  return { spans, rest };
};

/** What is left of `ours` where no span of `theirs` runs the other way: interval by interval. */
const uncovered = (ours: readonly Span[], theirs: readonly Span[]): Span[] =>
  ours.flatMap((span) => {
    let left: (readonly [number, number])[] = [[span.low, span.high]];
    for (const other of theirs) {
      if (other.way === span.way) continue;
      left = left.flatMap(([low, high]) =>
        [
          [low, Math.min(high, other.low)] as const,
          [Math.max(low, other.high), high] as const,
        ].filter(([a, b]) => b - a > ON_LINE),
      );
    }
    return left.map(([low, high]) => ({ low, high, way: span.way }));
  });

/** Spans as edges in the plane in which `line` is given. */
const asEdges = (spans: readonly Span[], line: Line): FlatEdge[] => {
  const frame = bendFrame(line);
  const at = (u: number): Vec2 => [frame.o[0] + frame.x[0] * u, frame.o[1] + frame.x[1] * u];
  return spans.map(({ low, high, way }) => ({ from: at(way > 0 ? low : high), to: at(way > 0 ? high : low), bulge: 0 }));
};

const laid = (edges: readonly FlatEdge[], pose: Rigid): FlatEdge[] => {
  const place = ([x, y]: Vec2): Vec2 => {
    const p = apply(pose, [x, y, 0]);
    return [p[0], p[1]];
  };
  return edges.map((edge) => ({ from: place(edge.from), to: place(edge.to), bulge: edge.bulge }));
};

/**
 * All plates and zones laid flat in the plane of plate 0. Where a zone's edge and its plate's edge run over one another on
 * the bend's tangent line, both are taken out: the metal runs on.
 */
export const flatPieces = (sheet: Developed): FlatPiece[] => {
  const { part, allowances } = sheet;
  const { poses } = fold(sheet, part.bends.map(() => 0));
  const free = part.plates.map((plate) => contourEdges([plate.outline, ...plate.holes]));
  const zones = part.bends.map((bend, index): FlatPiece => {
    const allowance = allowances[index]!;
    const stretched = bend.zone.map((contour) => contour.map((v) => ({ ...v, y: v.y * allowance })));
    const edges = contourEdges(stretched);
    const length = Math.hypot(
      bend.sides[0].line.to[0] - bend.sides[0].line.from[0],
      bend.sides[0].line.to[1] - bend.sides[0].line.from[1],
    );
    let left: readonly FlatEdge[] = edges;
    bend.sides.forEach((side, which) => {
      const line: Line = { from: [0, which * allowance], to: [length, which * allowance] };
      const zone = onLine(left, line);
      const plate = onLine(free[side.plate]!, side.line);
      left = [...zone.rest, ...asEdges(uncovered(zone.spans, plate.spans), line)];
      free[side.plate] = [...plate.rest, ...asEdges(uncovered(plate.spans, zone.spans), side.line)];
    });
    const pose = compose(poses[bend.sides[0].plate]!, bendFrame(bend.sides[0].line));
    return { name: `bend ${bend.id}`, bend: bend.id, edges: laid(edges, pose), free: laid(left, pose) };
  });
  const plates = part.plates.map((plate, index): FlatPiece => ({
    name: `plate ${index + 1}`,
    plate: index,
    edges: laid(contourEdges([plate.outline, ...plate.holes]), poses[index]!),
    free: laid(free[index]!, poses[index]!),
  }));
  return [...plates, ...zones];
};

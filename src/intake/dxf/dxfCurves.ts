import type { DxfEntity, DxfFile } from 'dxf';
import { type Vec2, flatten, vertex } from '../../geometry/index.js';
import { type Affine, AS_DRAWN, MIRRORED, after, keepsCircles, mirrors, placed } from './affine.js';
import { splinePoints } from './bSpline.js';

/** A straight edge or an arc (bulge as on a contour) of the drawing, in the drawing's own unit. */
export interface Curve {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly bulge: number;
  readonly layer: string;
  /** The entity's own line type or, where it has none, its layer's. */
  readonly lineType: string;
}

export interface DxfCurves {
  readonly curves: readonly Curve[];
  /** Entities by type that stand for cut-outs or outlines in no way that is understood: hatches, dimensions, splines without control points. */
  readonly leftOut: Readonly<Record<string, number>>;
  /** Splines and ellipses cut into chords. */
  readonly approximated: number;
}

/** Blocks in blocks in blocks: deeper than any drawing, and a block that holds itself comes to an end. */
const DEEPEST = 12;
/** More edges than any blank has; beyond it the file is refused rather than read for minutes. */
export const MOST_CURVES = 200_000;

/** Writing and bookkeeping: no metal. */
const SILENT = new Set(['TEXT', 'MTEXT', 'ATTRIB', 'ATTDEF', 'POINT', 'VIEWPORT', 'DIMENSION', 'LEADER', 'HATCH', 'OLE2FRAME']);

type Edge = Pick<Curve, 'from' | 'to' | 'bulge'>;

const point = (p: { readonly x?: number; readonly y?: number } | undefined): Vec2 => [p?.x ?? 0, p?.y ?? 0];

const chain = (points: readonly Vec2[]): Edge[] => points.slice(1).map((to, i) => ({ from: points[i]!, to, bulge: 0 }));

/** A circular arc from one angle to the next (radians, counter-clockwise) as one edge, or two where it is more than half a turn. */
const arc = ([x, y]: Vec2, r: number, start: number, end: number): Edge[] => {
  const turn = 2 * Math.PI;
  const sweep = ((((end - start) % turn) + turn) % turn) || turn;
  const pieces = sweep > Math.PI ? 2 : 1;
  const on = (k: number): Vec2 => {
    const a = start + (sweep * k) / pieces;
    return [x + r * Math.cos(a), y + r * Math.sin(a)];
  };
  return Array.from({ length: pieces }, (_, k) => ({ from: on(k), to: on(k + 1), bulge: Math.tan(sweep / pieces / 4) }));
};

const ellipse = (it: DxfEntity, chordError: number): Edge[] => {
  const turn = 2 * Math.PI;
  const major: Vec2 = [it.majorX ?? 0, it.majorY ?? 0];
  const ratio = (it.axisRatio ?? 1) * (it.extrusionZ === -1 ? -1 : 1);
  const start = it.startAngle ?? 0;
  const sweep = (((((it.endAngle ?? turn) - start) % turn) + turn) % turn) || turn;
  const radius = Math.hypot(...major);
  // chords of an ellipse leave it by no more than those of its great circle
  const step = 2 * Math.acos(Math.max(0.5, 1 - chordError / Math.max(radius, chordError)));
  const pieces = Math.max(8, Math.ceil(sweep / step));
  const [x, y] = point(it);
  const points = Array.from({ length: pieces + 1 }, (_, k): Vec2 => {
    const a = start + (sweep * k) / pieces;
    return [x + major[0] * Math.cos(a) - major[1] * ratio * Math.sin(a), y + major[1] * Math.cos(a) + major[0] * ratio * Math.sin(a)];
  });
  // a whole one ends exactly where it began
  return chain(sweep === turn ? [...points.slice(0, -1), points[0]!] : points);
};

const spline = (it: DxfEntity, chordError: number): Edge[] | null => {
  const points = (it.controlPoints ?? []).map(point);
  const [degree, knots] = [it.degree ?? 3, it.knots ?? []];
  if (points.length <= degree || knots.length !== points.length + degree + 1) return null;
  const weights = it.weights?.length === points.length ? { weights: it.weights } : {};
  return chain(splinePoints({ degree, knots, points, ...weights }, chordError));
};

const polyline = (it: DxfEntity): Edge[] | null => {
  if (it.polygonMesh === true || it.polyfaceMesh === true) return null;
  const vertices = it.vertices ?? [];
  const ring = it.closed === true ? [...vertices, vertices[0]] : vertices;
  return ring.slice(1).map((to, i) => ({ from: point(ring[i]), to: point(to), bulge: ring[i]?.bulge ?? 0 }));
};

/** The entity's edges in its own plane; null for one that is not understood, undefined for one that draws no edge. */
const edgesOf = (it: DxfEntity, chordError: number): Edge[] | null | undefined => {
  if (SILENT.has(it.type)) return undefined;
  switch (it.type) {
    case 'LINE':
      return [{ from: point(it.start), to: point(it.end), bulge: 0 }];
    case 'ARC':
      return arc(point(it), it.r ?? 0, it.startAngle ?? 0, it.endAngle ?? 0);
    case 'CIRCLE':
      return arc(point(it), it.r ?? 0, 0, 2 * Math.PI);
    case 'LWPOLYLINE':
    case 'POLYLINE':
      return polyline(it);
    case 'ELLIPSE':
      return ellipse(it, chordError);
    case 'SPLINE':
      return spline(it, chordError);
    default:
      return null;
  }
};

/** An arc whose block stretches it is no arc any more: cut into chords first. */
const stretched = (edge: Edge, chordError: number): Edge[] =>
  edge.bulge === 0
    ? [edge]
    : // the returning edge of the two-cornered contour is not part of it
      chain([...flatten([vertex(edge.from[0], edge.from[1], edge.bulge), vertex(edge.to[0], edge.to[1])], chordError)]);

/** These lie in the entity's own plane; lines, ellipses and splines in the drawing's. */
const IN_OWN_PLANE = new Set(['ARC', 'CIRCLE', 'LWPOLYLINE', 'POLYLINE', 'INSERT']);

/** All edges of the model, blocks put in place, in the drawing's own unit; curves cut to `chordError` of that unit. */
export const dxfCurves = (file: DxfFile, chordError: number): DxfCurves => {
  const curves: Curve[] = [];
  const leftOut: Record<string, number> = {};
  let approximated = 0;
  const blocks = new Map(file.blocks.map((block) => [block.name, block]));
  const visit = (entities: readonly DxfEntity[], m: Affine, layerOfInsert: string | undefined, depth: number): void => {
    for (const it of entities) {
      if (it.visible === false || (it.paperSpace !== undefined && it.paperSpace !== 0) || curves.length > MOST_CURVES) continue;
      // what is drawn on layer 0 of a block takes the layer of the insert
      const layer = layerOfInsert !== undefined && (it.layer ?? '0') === '0' ? layerOfInsert : (it.layer ?? '0');
      const plane = it.extrusionZ === -1 && IN_OWN_PLANE.has(it.type) ? after(m, MIRRORED) : m;
      if (it.type === 'INSERT') {
        const block = blocks.get(it.block);
        if (block === undefined || depth >= DEEPEST) {
          leftOut['INSERT'] = (leftOut['INSERT'] ?? 0) + 1;
          continue;
        }
        const turn = ((it.rotation ?? 0) * Math.PI) / 180;
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        const [sx, sy] = [it.scaleX ?? 1, it.scaleY ?? 1];
        const base: Affine = { ...AS_DRAWN, e: -(block.x ?? 0), f: -(block.y ?? 0) };
        for (let row = 0; row < (it.rowCount ?? 1); row++) {
          for (let column = 0; column < (it.columnCount ?? 1); column++) {
            if (curves.length > MOST_CURVES) return;
            const [dx, dy] = [column * (it.columnSpacing ?? 0), row * (it.rowSpacing ?? 0)];
            const where: Affine = { a: c * sx, b: s * sx, c: -s * sy, d: c * sy, e: (it.x ?? 0) + c * dx - s * dy, f: (it.y ?? 0) + s * dx + c * dy };
            visit(block.entities, after(plane, after(where, base)), layer, depth + 1);
          }
        }
        continue;
      }
      const edges = edgesOf(it, chordError);
      if (edges === undefined) continue;
      if (edges === null) {
        leftOut[it.type] = (leftOut[it.type] ?? 0) + 1;
        continue;
      }
      if (it.type === 'ELLIPSE' || it.type === 'SPLINE') approximated += 1;
      const lineType = it.lineTypeName ?? file.tables.layers[layer]?.lineTypeName ?? '';
      const round = keepsCircles(plane);
      for (const edge of edges.flatMap((e) => (round ? [e] : stretched(e, chordError)))) {
        curves.push({ from: placed(plane, edge.from), to: placed(plane, edge.to), bulge: mirrors(plane) ? -edge.bulge || 0 : edge.bulge, layer, lineType });
      }
    }
  };
  visit(file.entities, AS_DRAWN, undefined, 0);
  return { curves, leftOut, approximated };
};

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
  /** Does the entity bring a line type of its own, other than its layer's? */
  readonly ownType: boolean;
}

export interface DxfCurves {
  readonly curves: readonly Curve[];
  /** Entities by type that stand for cut-outs or outlines in no way that is understood: hatches, dimensions, splines without control points. */
  readonly leftOut: Readonly<Record<string, number>>;
  /** Splines and ellipses cut into chords. */
  readonly approximated: number;
  /** Writing, in the drawing's own unit. */
  readonly texts: readonly DrawnText[];
  /** More than `MOST_CURVES` edges or inserts: what is above is not the whole drawing. */
  readonly tooMany: boolean;
}

/** A line of writing: where it begins and ends on the drawing (the end by a mean width of letters). */
export interface DrawnText {
  readonly words: string;
  readonly from: Vec2;
  readonly to: Vec2;
  readonly height: number;
  readonly layer: string;
}

/** Blocks in blocks in blocks: deeper than any drawing, and a block that holds itself comes to an end. */
const DEEPEST = 12;
/** More edges than any blank has; beyond it the file is refused rather than read for minutes. */
export const MOST_CURVES = 200_000;
/** Chords of one ellipse: at a hundredth of a millimetre enough for a radius of 5 km. */
const MOST_CHORDS = 4096;
/** Degree and control points of a spline: above these it is no cut edge (drawing programs stay under degree 11). */
const HIGHEST_DEGREE = 25;
const MOST_POINTS = 20_000;
/** Units from the origin beyond which numbers no longer tell a thousandth of a millimetre apart. */
const FARTHEST = 1e9;

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
  const pieces = Math.min(MOST_CHORDS, Math.max(8, Math.ceil(sweep / step)));
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
  const fair = Number.isInteger(degree) && degree >= 1 && degree <= HIGHEST_DEGREE && points.length <= MOST_POINTS;
  if (!fair || points.length <= degree || knots.length !== points.length + degree + 1) return null;
  // knots must not fall; anything else is a damaged file
  if (!knots.every((knot, i) => Number.isFinite(knot) && (i === 0 || knot >= knots[i - 1]!))) return null;
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

/** Lines of writing that are looked at: bend notes are few. */
const MOST_TEXTS = 2000;
/** Width of a letter over its height, a mean of drawing fonts (common practice, no source). */
const LETTER_WIDTH = 0.7;

/** The writing without the codes that style it: stacks, fonts, paragraph ends, degree signs. */
const plain = (words: string): string =>
  words
    .slice(0, 400)
    .replace(/\\U\+00B0|%%d/gi, '°')
    .replace(/\\P/g, ' ')
    .replace(/\\[A-Za-z][^;\\{}]*;/g, '')
    .replace(/[{}]/g, '')
    .trim();

/** Where the writing stands: from its first letter to its last. */
const textOf = (it: DxfEntity, plane: Affine, layer: string): DrawnText[] => {
  const words = plain(it.string ?? '');
  const height = it.textHeight ?? it.nominalTextHeight ?? 1;
  const anchored = ((it.hAlign ?? 0) !== 0 || (it.vAlign ?? 0) !== 0) && it.x2 !== undefined;
  const at: Vec2 = anchored ? [it.x2!, it.y2 ?? 0] : point(it);
  const turn = ((it.rotation ?? 0) * Math.PI) / 180;
  const along: Vec2 = it.xAxisX === undefined ? [Math.cos(turn), Math.sin(turn)] : [it.xAxisX, it.xAxisY ?? 0];
  const length = words.length * height * LETTER_WIDTH;
  // anchored at its middle or its end: columns 1, 2 of a line of text, 2, 3 of an attachment
  const column = it.type === 'MTEXT' ? ((it.attachmentPoint ?? 1) - 1) % 3 : anchored ? Math.min(2, it.hAlign ?? 0) : 0;
  const from: Vec2 = [at[0] - (along[0] * length * column) / 2, at[1] - (along[1] * length * column) / 2];
  const [p, q] = [placed(plane, from), placed(plane, [from[0] + along[0] * length, from[1] + along[1] * length])];
  const known = words !== '' && [...p, ...q, height].every((x) => Math.abs(x) <= FARTHEST);
  return known ? [{ words, from: p, to: q, height: Math.abs(height), layer }] : [];
};

/** These lie in the entity's own plane; lines, ellipses and splines in the drawing's. */
const IN_OWN_PLANE = new Set(['ARC', 'CIRCLE', 'LWPOLYLINE', 'POLYLINE', 'INSERT']);

/** All edges of the model, blocks put in place, in the drawing's own unit; curves cut to `chordError` of that unit. */
export const dxfCurves = (file: DxfFile, chordError: number): DxfCurves => {
  const curves: Curve[] = [];
  const leftOut: Record<string, number> = {};
  const texts: DrawnText[] = [];
  let approximated = 0;
  /** Inserts put in place: a block of nothing in ten thousand rows costs time too. */
  let inserts = 0;
  const blocks = new Map(file.blocks.map((block) => [block.name, block]));
  const visit = (entities: readonly DxfEntity[], m: Affine, layerOfInsert: string | undefined, depth: number): void => {
    for (const it of entities) {
      if (it.visible === false || (it.paperSpace !== undefined && it.paperSpace !== 0) || curves.length > MOST_CURVES || inserts > MOST_CURVES) continue;
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
            inserts += 1;
            if (curves.length > MOST_CURVES || inserts > MOST_CURVES) return;
            const [dx, dy] = [column * (it.columnSpacing ?? 0), row * (it.rowSpacing ?? 0)];
            const where: Affine = { a: c * sx, b: s * sx, c: -s * sy, d: c * sy, e: (it.x ?? 0) + c * dx - s * dy, f: (it.y ?? 0) + s * dx + c * dy };
            visit(block.entities, after(plane, after(where, base)), layer, depth + 1);
          }
        }
        continue;
      }
      if (it.string !== undefined && texts.length < MOST_TEXTS) texts.push(...textOf(it, plane, layer));
      const edges = edgesOf(it, chordError);
      if (edges === undefined) continue;
      if (edges === null) {
        leftOut[it.type] = (leftOut[it.type] ?? 0) + 1;
        continue;
      }
      if (it.type === 'ELLIPSE' || it.type === 'SPLINE') approximated += 1;
      const layers = file.tables.layers;
      const ofLayer = (Object.hasOwn(layers, layer) ? layers[layer]?.lineTypeName : undefined) ?? '';
      const ownType = it.lineTypeName !== undefined && !/^by(layer|block)$/i.test(it.lineTypeName) && it.lineTypeName !== ofLayer;
      const lineType = ownType ? it.lineTypeName! : ofLayer;
      const round = keepsCircles(plane);
      for (const edge of edges.flatMap((e) => (round ? [e] : stretched(e, chordError)))) {
        const [from, to] = [placed(plane, edge.from), placed(plane, edge.to)];
        const known = [...from, ...to].every((x) => Math.abs(x) <= FARTHEST) && Number.isFinite(edge.bulge);
        if (known) curves.push({ from, to, bulge: mirrors(plane) ? -edge.bulge || 0 : edge.bulge, layer, lineType, ownType });
        else leftOut[`${it.type} without a place`] = (leftOut[`${it.type} without a place`] ?? 0) + 1;
      }
    }
  };
  visit(file.entities, AS_DRAWN, undefined, 0);
  return { curves, leftOut, approximated, texts, tooMany: curves.length > MOST_CURVES || inserts > MOST_CURVES };
};

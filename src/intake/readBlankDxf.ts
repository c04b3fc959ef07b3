import { parseString } from 'dxf';
import { type Contour, type Vec2, bounds, flatten, reversed, signedArea, vertex } from '../geometry/index.js';
import type { Assumption, Part } from '../sheet/index.js';
import { chainCurves } from './dxf/chainCurves.js';
import { chooseUnit } from './dxf/chooseUnit.js';
import { type Curve, MOST_CURVES, dxfCurves } from './dxf/dxfCurves.js';
import { CURVE_CHORD } from './tolerances.js';

/** A blank already cut, as its drawing shows it. mm, in the drawing's own frame. */
export interface CutBlank {
  /** Counter-clockwise, arcs as bulges. */
  readonly outline: Contour;
  /** Clockwise. */
  readonly holes: readonly Contour[];
  /** mm2, holes taken off. */
  readonly area: number;
  /** Sides of the upright rectangle about it: along x, along y. */
  readonly size: readonly [number, number];
  readonly unit: Part['unit'];
  /** Every layer with edges on it, and whether they were taken as cut lines. */
  readonly layers: readonly { readonly name: string; readonly edges: number; readonly cut: boolean }[];
  readonly assumptions: readonly Assumption[];
}

export interface BlankDxfFailure {
  readonly code: 'unreadable file' | 'too large' | 'no outline' | 'branching lines' | 'several outlines';
  /** Names the thing and the measure. */
  readonly sentence: string;
}

export interface BlankDxfOptions {
  /** Layers that hold the cut lines; by default all whose name or line type does not speak of something else. */
  readonly layers?: readonly string[];
  /** mm up to which loose ends are joined. */
  readonly gap?: number;
  /** The unit the drawing is in, whatever its header says. */
  readonly unit?: Part['unit'];
}

export type BlankDxfResult =
  | { readonly ok: true; readonly value: CutBlank }
  | { readonly ok: false; readonly failure: BlankDxfFailure };

/** mm, common practice, no source: wider than drawing programs leave by rounding, narrower than any cut-out. */
const GAP = 0.05;

/** Names of layers and line types that speak of bend lines, writing and construction, in the languages such files come in. */
const NOT_CUT = /bend|bieg|kant|fold|pli|pieg|pleg|text|note|dim|bem|mass|cent|mitte|axis|hidden|verdeckt|dash|strich|phantom|construct|hilf|engrav|gravur|mark|frame|title|border/i;

const failed = (code: BlankDxfFailure['code'], sentence: string): BlankDxfResult => ({ ok: false, failure: { code, sentence } });

const assumed = (code: Assumption['code'], sentence: string): Assumption => ({ code, sentence, plates: [], bends: [] });

/** Is a point of the inner loop inside the outer one (even-odd, arcs as chords)? */
const inside = (inner: Contour, outer: readonly Vec2[]): boolean => {
  const [x, y] = [inner[0]!.x, inner[0]!.y];
  let within = false;
  outer.forEach((p, i) => {
    const q = outer[(i + 1) % outer.length]!;
    if (p[1] > y !== q[1] > y && x < p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1])) within = !within;
  });
  return within;
};

const list = (counts: Readonly<Record<string, number>>): string =>
  Object.entries(counts)
    .map(([name, n]) => `${n} on "${name}"`)
    .join(', ');

/**
 * Reads the outline and holes of a flat blank from a DXF file: lines, arcs, circles and polylines kept exactly, splines and
 * ellipses cut into chords that leave them by 0.01 mm at most; the largest loop is the outline. Every guess (layers, unit, joined
 * gaps, what was left out) is listed with the result.
 *
 * @example readBlankDxf(await readFile('blank.dxf'))
 */
export const readBlankDxf = (bytes: Uint8Array | string, options: BlankDxfOptions = {}): BlankDxfResult => {
  const { gap = GAP } = options;
  const file = parseString(typeof bytes === 'string' ? bytes : new TextDecoder('utf-8').decode(bytes));
  if (file.entities.length === 0) return failed('unreadable file', 'The file holds no drawing in text DXF: no entity was found in it.');
  // first in the drawing's unit with curves cut as if it were mm; again below if a unit is larger
  const rough = dxfCurves(file, CURVE_CHORD);
  if (rough.curves.length > MOST_CURVES) return failed('too large', `The drawing has more than ${MOST_CURVES} edges.`);
  const isCut = (curve: Curve): boolean =>
    options.layers === undefined ? !NOT_CUT.test(curve.layer) && !NOT_CUT.test(curve.lineType) : options.layers.includes(curve.layer);
  const extent = bounds([rough.curves.filter(isCut).flatMap(({ from, to, bulge }) => [vertex(from[0], from[1], bulge), vertex(to[0], to[1])])]);
  const span: Vec2 = [extent[1][0] - extent[0][0], extent[1][1] - extent[0][1]];
  if (!(span[0] > 0 && span[1] > 0 && Number.isFinite(span[0] + span[1]))) {
    return failed('no outline', `No cut lines with a width and a height were found; layers in the file: ${[...new Set(rough.curves.map((curve) => curve.layer))].join(', ') || 'none'}.`);
  }
  const { unit, scale, assumption } = chooseUnit(span, file.header.insUnits, options.unit);
  const { curves, leftOut, approximated } = scale === 1 ? rough : dxfCurves(file, CURVE_CHORD / scale);
  const cut = curves.filter(isCut).map((curve): Curve => ({
    ...curve,
    from: [curve.from[0] * scale, curve.from[1] * scale],
    to: [curve.to[0] * scale, curve.to[1] * scale],
  }));
  const chains = chainCurves(cut, gap);
  if (chains.branch !== undefined) {
    const { at, edges } = chains.branch;
    return failed('branching lines', `At x ${at[0].toFixed(2)}, y ${at[1].toFixed(2)} mm ${edges} cut lines meet: which way the outline runs is not decided. Choose the layers that hold the cut lines.`);
  }
  const byArea = chains.loops.map((loop) => ({ loop, area: signedArea(loop) })).sort((p, q) => Math.abs(q.area) - Math.abs(p.area));
  const [largest, ...rest] = byArea;
  if (largest === undefined) {
    return failed('no outline', `The cut lines close nowhere within ${gap} mm: ${list(chains.loose) || 'no line'} left open.`);
  }
  const outline = largest.area > 0 ? largest.loop : reversed(largest.loop);
  const ring = flatten(outline, CURVE_CHORD);
  const apart = rest.filter(({ loop }) => !inside(loop, ring));
  if (apart.length > 0) {
    const { area } = apart[0]!;
    return failed('several outlines', `${apart.length + 1} outlines lie side by side, the second of ${Math.abs(area).toFixed(0)} mm2: one blank a file.`);
  }
  const holes = rest.map(({ loop, area }) => (area < 0 ? loop : reversed(loop)));
  const layers = [...new Set(curves.map((curve) => curve.layer))].map((name) => {
    const on = curves.filter((curve) => curve.layer === name);
    return { name, edges: on.length, cut: on.some(isCut) };
  });
  const other = layers.filter((layer) => !layer.cut);
  const { healed, doubled, loose } = chains;
  const assumptions: Assumption[] = [
    assumption,
    ...(other.length === 0 ? [] : [assumed('other', `Not taken as cut lines: ${other.map(({ name, edges }) => `layer "${name}" (${edges})`).join(', ')}.`)]),
    ...(healed.count === 0 ? [] : [assumed('healed gap', `${healed.count} gaps closed, the widest ${healed.widest.toFixed(4)} mm.`)]),
    ...(approximated === 0 ? [] : [assumed('edge approximated', `${approximated} splines or ellipses cut into chords that leave them by ${CURVE_CHORD} mm at most.`)]),
    ...(doubled === 0 ? [] : [assumed('other', `${doubled} lines drawn twice were taken once.`)]),
    ...(Object.keys(loose).length === 0 ? [] : [assumed('feature left out', `Lines that close no loop were left out: ${list(loose)}.`)]),
    ...Object.entries(leftOut).map(([type, n]) => assumed('feature left out', `${n} ${type} entities were not understood and left out.`)),
  ];
  const [low, high] = bounds([outline]);
  return {
    ok: true,
    value: {
      outline,
      holes,
      area: signedArea(outline) + holes.reduce((sum, hole) => sum + signedArea(hole), 0),
      size: [high[0] - low[0], high[1] - low[1]],
      unit,
      layers,
      assumptions,
    },
  };
};

import { type Contour, type Vec2, bounds, flatten, length2, reversed, signedArea, sub2, vertex } from '../../geometry/index.js';
import type { Assumption, DxfReading } from '../../sheet/index.js';
import { CURVE_CHORD } from '../tolerances.js';
import { type Chains, chainCurves } from './chainCurves.js';
import { type UnitQuestion, chooseUnit } from './chooseUnit.js';
import { type Curve, type DrawnText, type DxfCurves, MOST_CURVES, dxfCurves } from './dxfCurves.js';
import { parseDxf } from './parseDxf.js';
import { within } from './region.js';
import { type DxfLayer, keyOf, layersOf } from './roles.js';
import { withoutOverlaps } from './withoutOverlaps.js';

/** A flat as its drawing shows it, mm, in the drawing's own frame. */
export interface Flat {
  /** Counter-clockwise, arcs as bulges. */
  readonly outline: Contour;
  /** Clockwise. */
  readonly holes: readonly Contour[];
  readonly area: number;
  readonly bendCurves: readonly (Pick<Curve, 'from' | 'to' | 'bulge'> & { readonly side: 'A' | 'B' | undefined; readonly doubtful: boolean })[];
  readonly texts: readonly DrawnText[];
  readonly unit: UnitQuestion;
  readonly layers: readonly DxfLayer[];
  readonly assumptions: readonly Assumption[];
}

/** What was seen of a drawing, whether it could be read or not: for a picture, and to choose layers by. */
export interface SeenDxf {
  readonly layers: readonly DxfLayer[];
  readonly unit?: UnitQuestion;
  /** mm */
  readonly curves: readonly (Pick<Curve, 'from' | 'to' | 'bulge'> & { readonly key: string })[];
}

export interface FlatFault {
  readonly code: 'unreadable file' | 'too large' | 'no outline' | 'branching lines' | 'several outlines';
  /** Names the thing and the measure. */
  readonly sentence: string;
  readonly measure?: number;
}

export type FlatResult = { readonly seen: SeenDxf } & ({ readonly ok: true; readonly value: Flat } | { readonly ok: false; readonly failure: FlatFault });

/** mm, common practice, no source: wider than drawing programs leave by rounding, narrower than any cut-out. */
const GAP = 0.05;
/** mm by which a line that belongs to no loop may miss the outline and still run from edge to edge. */
const TOUCHES = 0.1;
/** Lines of a picture: more are not told apart on a screen. */
const MOST_SEEN = 20_000;

const UNSEEN: SeenDxf = { layers: [], curves: [] };

const assumed = (code: Assumption['code'], sentence: string): Assumption => ({ code, sentence, plates: [], bends: [] });
const many = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

const list = (curves: readonly Curve[]): string =>
  [...new Set(curves.map(({ layer }) => layer))].map((name) => `${curves.filter(({ layer }) => layer === name).length} on "${name}"`).join(', ');

/** Straight loose lines that run from edge to edge of the outline: in all likelihood bend lines on the layer of the cut ones. */
const fromEdgeToEdge = (loose: readonly Curve[], outline: Contour): readonly Curve[] => {
  const ring = flatten(outline, CURVE_CHORD);
  const touches = (p: Vec2): boolean =>
    ring.some((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      const d = sub2(b, a);
      const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * d[0] + (p[1] - a[1]) * d[1]) / Math.max(d[0] ** 2 + d[1] ** 2, 1e-12)));
      return length2(sub2(p, [a[0] + t * d[0], a[1] + t * d[1]])) < TOUCHES;
    });
  return loose.filter(({ from, to, bulge }) => bulge === 0 && touches(from) && touches(to));
};

const layerWords = (layers: readonly DxfLayer[]): Assumption[] => {
  const of = (...roles: readonly DxfLayer['role'][]): string =>
    layers.filter(({ role }) => roles.includes(role)).map(({ key, edges }) => `layer "${key}" (${edges})`).join(', ');
  const [other, bends] = [of('ignore'), of('bend', 'bend A', 'bend B')];
  return [
    ...(bends === '' ? [] : [assumed('layers', `Taken as bend lines: ${bends}.`)]),
    ...(other === '' ? [] : [assumed('layers', `Not taken as cut lines: ${other}.`)]),
  ];
};

const chainWords = ({ healed, doubled }: Chains, gap: number): Assumption[] => [
  ...(healed.count === 0 ? [] : [assumed('healed gap', `${many(healed.count, 'gap', 'gaps')} closed, the widest ${healed.widest.toFixed(4)} mm (up to ${gap} mm are).`)]),
  ...(doubled === 0 ? [] : [assumed('other', `${many(doubled, 'line', 'lines')} drawn twice ${doubled === 1 ? 'was' : 'were'} taken once.`)]),
];

/** Outline and holes of the loops; or why they are none. */
const asBlank = (loops: readonly Contour[]): { readonly outline: Contour; readonly holes: readonly Contour[]; readonly area: number } | FlatFault | null => {
  const [largest, ...rest] = loops.map((loop) => ({ loop, area: signedArea(loop) })).sort((p, q) => Math.abs(q.area) - Math.abs(p.area));
  if (largest === undefined) return null;
  const outline = largest.area > 0 ? largest.loop : reversed(largest.loop);
  const ring = flatten(outline, CURVE_CHORD);
  const apart = rest.filter(({ loop }) => !within(ring, [loop[0]!.x, loop[0]!.y]));
  if (apart.length > 0) {
    const { area } = apart[0]!;
    return { code: 'several outlines', sentence: `${apart.length + 1} outlines lie side by side, the second of ${Math.abs(area).toFixed(0)} mm2: one outline a file.`, measure: apart.length + 1 };
  }
  const holes = rest.map(({ loop, area }) => (area < 0 ? loop : reversed(loop)));
  return { outline, holes, area: signedArea(outline) + holes.reduce((sum, hole) => sum + signedArea(hole), 0) };
};

/** Cut contours, bend lines and writing of a flat, with every guess on the way. */
export const readFlat = (bytes: Uint8Array | string, told: Pick<DxfReading, 'roles' | 'gap' | 'unit'> & { readonly layers?: readonly string[] }): FlatResult => {
  const { gap = GAP } = told;
  const parsed = parseDxf(bytes);
  if (!parsed.ok) return { ok: false, seen: UNSEEN, failure: parsed };
  const { file } = parsed;
  // first in the drawing's unit with curves cut as if it were mm; again below if a unit is larger
  const rough = dxfCurves(file, CURVE_CHORD);
  const tooMany: FlatResult = { ok: false, seen: UNSEEN, failure: { code: 'too large', sentence: `The drawing has more than ${MOST_CURVES} edges or inserts.`, measure: MOST_CURVES } };
  if (rough.tooMany) return tooMany;
  const only = told.layers;
  const roles = only === undefined ? told.roles : Object.fromEntries(layersOf(rough.curves).map(({ key, layer, role }) => [key, only.includes(layer) ? 'cut' : role === 'cut' ? 'ignore' : role] as const));
  const layers = layersOf(rough.curves, roles);
  const roleOf = new Map(layers.map(({ key, role }) => [key, role]));
  const isCut = (curve: Curve): boolean => roleOf.get(keyOf(curve)) === 'cut';
  const span = spanOf(rough.curves.filter(isCut));
  const picture = (curves: readonly Curve[], scale: number): SeenDxf['curves'] =>
    curves.slice(0, MOST_SEEN).map((curve) => ({ from: [curve.from[0] * scale, curve.from[1] * scale], to: [curve.to[0] * scale, curve.to[1] * scale], bulge: curve.bulge, key: keyOf(curve) }));
  if (!(span[0] > 0 && span[1] > 0)) {
    return {
      ok: false, seen: { layers, curves: picture(rough.curves, 1) },
      failure: { code: 'no outline', sentence: `No cut lines with a width and a height were found; layers in the file: ${layers.map(({ key }) => key).join(', ') || 'none'}.` },
    };
  }
  const { scale, assumption, question } = chooseUnit(span, file.header.insUnits, told.unit);
  const drawing: DxfCurves = scale === 1 ? rough : dxfCurves(file, CURVE_CHORD / scale);
  if (drawing.tooMany) return tooMany;
  const curves = drawing.curves.map((curve): Curve => ({ ...curve, from: [curve.from[0] * scale, curve.from[1] * scale], to: [curve.to[0] * scale, curve.to[1] * scale] }));
  const seen: SeenDxf = { layers, unit: question, curves: picture(curves, 1) };
  const failed = (code: FlatFault['code'], sentence: string, measure?: number): FlatResult => ({ ok: false, seen, failure: { code, sentence, ...(measure === undefined ? {} : { measure }) } });
  const clean = withoutOverlaps(curves.filter(isCut));
  const chains = chainCurves(clean.curves, gap);
  if (chains.branch !== undefined) {
    const { at, edges } = chains.branch;
    return failed('branching lines', `At x ${at[0].toFixed(2)}, y ${at[1].toFixed(2)} mm ${edges} cut lines meet: which way the outline runs is not decided. Choose the layers that hold the cut lines.`, edges);
  }
  const blank = asBlank(chains.loops);
  if (blank === null) return failed('no outline', `The cut lines close nowhere within ${gap} mm: ${list(chains.loose) || 'no line'} left open.`, gap);
  if ('code' in blank) return { ok: false, seen, failure: blank };
  const named = curves.flatMap((curve) => {
    const role = roleOf.get(keyOf(curve))!;
    if (!role.startsWith('bend')) return [];
    const { from, to, bulge } = curve;
    return [{ from, to, bulge, side: role === 'bend A' ? ('A' as const) : role === 'bend B' ? ('B' as const) : undefined, doubtful: false }];
  });
  const across = named.length > 0 || only !== undefined ? [] : fromEdgeToEdge(chains.loose, blank.outline);
  const loose = chains.loose.filter((curve) => !across.includes(curve));
  return {
    ok: true,
    seen,
    value: {
      ...blank,
      bendCurves: [...named, ...across.map(({ from, to, bulge }) => ({ from, to, bulge, side: undefined, doubtful: true }))],
      texts: drawing.texts.map((text) => ({ ...text, from: [text.from[0] * scale, text.from[1] * scale], to: [text.to[0] * scale, text.to[1] * scale], height: text.height * scale })),
      unit: question,
      layers,
      assumptions: [
        assumption,
        ...layerWords(layers),
        ...(clean.removed === 0 ? [] : [assumed('other', `${many(clean.removed, 'line', 'lines')} over others ${clean.removed === 1 ? 'was' : 'were'} taken once (${clean.length.toFixed(2)} mm drawn more than once).`)]),
        ...chainWords(chains, gap),
        ...(drawing.approximated === 0 ? [] : [assumed('edge approximated', `${many(drawing.approximated, 'spline or ellipse', 'splines or ellipses')} cut into chords that leave them by ${CURVE_CHORD} mm at most.`)]),
        ...(across.length === 0 ? [] : [assumed('layers', `${many(across.length, 'line', 'lines')} that run from edge to edge inside the outline (${list(across)}) taken as bend lines.`)]),
        ...(loose.length === 0 ? [] : [assumed('feature left out', `Lines that close no loop were left out: ${list(loose)}.`)]),
        ...Object.entries(drawing.leftOut).map(([type, n]) => assumed('feature left out', `${n} ${type} entities were not understood and left out.`)),
      ],
    },
  };
};

const spanOf = (curves: readonly Curve[]): Vec2 => {
  if (curves.length === 0) return [0, 0];
  const [low, high] = bounds([curves.flatMap(({ from, to, bulge }) => [vertex(from[0], from[1], bulge), vertex(to[0], to[1])])]);
  return [high[0] - low[0], high[1] - low[1]];
};

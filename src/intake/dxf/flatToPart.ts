import { type Contour, type Vec2, flatten } from '../../geometry/index.js';
import { type Bend, type Part, type Plate, type SheetFailure, tree } from '../../sheet/index.js';
import { CURVE_CHORD } from '../tolerances.js';
import type { DrawnBend } from './bendLines.js';
import { type Metal, type Piece, cutMetal, pieceArea, within } from './region.js';
import { type Zone, type ZoneFailure, frameOf, unrolled, zonesOf } from './zones.js';

/** A bend line with all that makes it a bend. */
export interface FlatBend extends Pick<Bend, 'id' | 'kind' | 'bendAngle' | 'direction' | 'insideRadius'> {
  readonly drawn: DrawnBend;
  /** mm of the flat that the bend takes up. */
  readonly width: number;
}

export interface FlatFailure {
  readonly code: ZoneFailure['code'] | 'flange too short' | 'bend without plate' | SheetFailure['code'];
  readonly sentence: string;
  readonly bends: readonly string[];
  /** mm (mm2 for strips that overlap) */
  readonly by?: number;
}

export interface FlatParted {
  readonly plates: readonly Plate[];
  readonly bends: readonly Bend[];
  /** Bends beside which metal had to be slit, for want of a relief. */
  readonly slit: readonly string[];
  /** Bends whose strips met over a corner, and the mm2 left to the first of the two. */
  readonly corners: readonly { readonly ids: readonly [string, string]; readonly by: number }[];
  /** Bend lines that cross no metal. */
  readonly unused: readonly string[];
}

/** mm: an edge this near to a line lies on it. */
const ON_LINE = 2e-3;
/** mm2 a mm of bend by which a strip found again may differ: the chords of its clipping. */
const SAME_AREA = 2e-3;
const point = (v: { readonly x: number; readonly y: number }): Vec2 => [v.x, v.y];

/** Plates with an edge on the line `d` mm beside a bend line, within the strip's reach. */
const platesAt = (plates: readonly Piece[], zone: Zone, bend: FlatBend, d: number): number[] => {
  const { place } = frameOf(bend.drawn);
  const on = ({ outline, holes }: Piece | { outline: Contour; holes: readonly Contour[] }, want: 1 | -1): (readonly [number, number])[] =>
    [outline, ...holes].flatMap((contour) =>
      contour.flatMap((v, i) => {
        const [p, q] = [place(point(v)), place(point(contour[(i + 1) % contour.length]!))];
        const lies = v.bulge === 0 && Math.abs(p[1] - d) < ON_LINE && Math.abs(q[1] - d) < ON_LINE;
        return lies && Math.sign(q[0] - p[0]) === want ? [[Math.min(p[0], q[0]), Math.max(p[0], q[0])] as const] : [];
      }),
    );
  // metal to the left of every edge: the strip's own edge at its lower side runs forward, its plate's backward
  const way = d < 0 ? 1 : -1;
  const ours = on(zone.piece, way);
  return plates.flatMap((plate, index) =>
    on(plate, way === 1 ? -1 : 1).some(([a, b]) => ours.some(([p, q]) => Math.min(b, q) - Math.max(a, p) > ON_LINE)) ? [index] : [],
  );
};

const inWords = (failure: ZoneFailure, bends: readonly FlatBend[]): FlatFailure => {
  if (failure.code === 'bend line ends in metal') {
    const { id } = bends[failure.line]!;
    const [x, y] = failure.at;
    return { code: failure.code, bends: [id], by: failure.by, sentence: `Bend line ${id} ends inside the metal at x ${x.toFixed(2)}, y ${y.toFixed(2)} mm, ${failure.by.toFixed(2)} mm short of an edge: a bend runs from edge to edge.` };
  }
  const [one, other] = failure.lines.map((line) => bends[line]!) as [FlatBend, FlatBend];
  return {
    code: failure.code,
    bends: [one.id, other.id],
    by: failure.by,
    sentence: `The strips of bends ${one.id} and ${other.id}, ${one.width.toFixed(2)} and ${other.width.toFixed(2)} mm wide at these radii, lie over one another by ${failure.by.toFixed(2)} mm2: the lines are too close, or the unit or a radius is wrong.`,
  };
};

/** Cuts a flat along its bends' strips: what remains between them are the plates, each in the drawing's own frame, A side up. */
export const flatToPart = (metal: Metal, bends: readonly FlatBend[]): FlatParted | FlatFailure => {
  const found = zonesOf(metal, bends.map(({ drawn }) => drawn), bends.map(({ width }) => width));
  if ('code' in found) return inWords(found, bends);
  const pieces = cutMetal(metal, found.zones.flatMap(({ cuts }) => cuts))?.map((piece) => ({ piece, area: pieceArea(piece), ring: flatten(piece.outline, CURVE_CHORD) }));
  if (pieces === undefined) return { code: 'flat pattern open', sentence: 'The flat does not close where it is cut along its bends.', bends: [] };
  // of the pieces about a strip's middle the strip itself, not a plate around it
  const zones = found.zones.flatMap((zone) => {
    const own = pieces.find(({ ring, area }) => within(ring, zone.middle) && Math.abs(area - zone.area) < SAME_AREA * (1 + zone.span[1] - zone.span[0]));
    return own === undefined ? [] : [{ ...zone, piece: own.piece }];
  });
  if (zones.length < found.zones.length) return { code: 'flat pattern open', sentence: `The flat falls into ${pieces.length} pieces along its ${found.zones.length} bends; their strips are not found again among them.`, bends: [] };
  const strips = new Set(zones.map(({ piece }) => piece));
  const plates = pieces.map(({ piece }) => piece).filter((piece) => !strips.has(piece)).sort((p, q) => pieceArea(q) - pieceArea(p));
  const made: { bend: FlatBend; line: number; plates: readonly [number, number]; zones: Zone[] }[] = [];
  for (const zone of zones) {
    const bend = bends[zone.line]!;
    const sides = [-bend.width / 2, bend.width / 2].map((d) => platesAt(plates, zone, bend, d));
    const bare = sides.findIndex((found) => found.length === 0);
    if (bare !== -1) {
      return {
        code: 'flange too short',
        bends: [bend.id],
        by: bend.width / 2,
        sentence: `Beside bend line ${bend.id} there is less metal than the ${(bend.width / 2).toFixed(2)} mm that half of its bend takes up with an inside radius of ${bend.insideRadius} mm: no flange is left.`,
      };
    }
    const many = sides.find((found) => found.length > 1);
    if (many !== undefined) {
      return { code: 'bend without plate', bends: [bend.id], sentence: `Bend ${bend.id} joins ${many.length} plates on one side: a slit between them ends inside the bend. Let it run ${(bend.width / 2).toFixed(2)} mm past the bend line, or draw one bend line for each.` };
    }
    const pair = [sides[0]![0]!, sides[1]![0]!] as const;
    const known = made.find((it) => it.line === zone.line && it.plates[0] === pair[0] && it.plates[1] === pair[1]);
    if (known === undefined) made.push({ bend, line: zone.line, plates: pair, zones: [zone] });
    else known.zones.push(zone);
  }
  const taken = new Set<string>();
  const result = made.map(({ bend, plates: pair, zones: parts }): Bend => {
    const { at, place } = frameOf(bend.drawn);
    const us = parts.flatMap(({ piece }) => piece.outline.map((v) => place(point(v))[0]));
    const [low, high] = [Math.min(...us), Math.max(...us)];
    const side = (plate: number, d: number) => ({ plate, line: { from: at(low, d), to: at(high, d) } });
    let id = bend.id;
    // one drawn line may be several bends: b2, b2-2, b2-3
    for (let n = 2; taken.has(id); n++) id = `${bend.id}-${n}`;
    taken.add(id);
    const { kind, bendAngle, direction, insideRadius, width } = bend;
    return { id, kind, sides: [side(pair[0], -width / 2), side(pair[1], width / 2)], bendAngle, direction, insideRadius, zone: parts.flatMap((zone) => unrolled(zone, bend.drawn, width, low)) };
  });
  const checked = tree({ name: '', thickness: 1, plates, bends: result, assumptions: [], unit: 'mm' } satisfies Part);
  if (!checked.ok) return checked.failure;
  return {
    plates: plates.map(({ outline, holes }) => ({ outline, holes })),
    bends: result,
    slit: zones.flatMap(({ line, slit }) => (slit[0] || slit[1] ? [bends[line]!.id] : [])),
    corners: found.corners.map(({ lines, by }) => ({ ids: [bends[lines[0]]!.id, bends[lines[1]]!.id], by })),
    unused: bends.flatMap(({ id }, line) => (zones.some((zone) => zone.line === line) ? [] : [id])),
  };
};

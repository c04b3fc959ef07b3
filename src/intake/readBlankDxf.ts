import { type Contour, bounds } from '../geometry/index.js';
import type { Assumption, Part } from '../sheet/index.js';
import { type FlatFault, readFlat } from './dxf/readFlat.js';

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

export type BlankDxfFailure = FlatFault;

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

/**
 * Reads the outline and holes of a flat blank from a DXF file: lines, arcs, circles and polylines kept exactly, splines and
 * ellipses cut into chords that leave them by 0.01 mm at most; the largest loop is the outline. Every guess (layers, unit, joined
 * gaps, what was left out) is listed with the result.
 *
 * @example readBlankDxf(await readFile('blank.dxf'))
 */
export const readBlankDxf = (bytes: Uint8Array | string, options: BlankDxfOptions = {}): BlankDxfResult => {
  const read = readFlat(bytes, options);
  if (!read.ok) return { ok: false, failure: read.failure };
  const { outline, holes, area, layers, unit, assumptions } = read.value;
  const [low, high] = bounds([outline]);
  return {
    ok: true,
    value: {
      outline, holes, area, assumptions,
      size: [high[0] - low[0], high[1] - low[1]],
      unit: unit.taken,
      layers: layers.map(({ key, edges, role }) => ({ name: key, edges, cut: role === 'cut' })),
    },
  };
};

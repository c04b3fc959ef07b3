import type { Vec2, Vec3 } from '../geometry/index.js';
import { type Kernel, type Manifold, type Pool, section } from './engine.js';

/**
 * What a body moves with: it rests on the bed, hangs under the ram, or stands on the gauge. `ears` are the sliding ears of the
 * step's own punch as they hang: under the ram, but stopped by the sheet before it.
 */
export type Carrier = 'bed' | 'ram' | 'gauge' | 'ears';

/** A cross-section in (back, up) that reaches from `from` to `to` along the bed. Every body of a press is a row of these. */
export interface Slab {
  readonly polygons: readonly (readonly Vec2[])[];
  readonly from: number;
  readonly to: number;
}

/**
 * A body of the press. `ram` bodies are drawn with the shoulder seat at up 0, `gauge` bodies with the fingers'
 * reference at (back 0, up 0), `bed` bodies where they stand.
 */
export interface Body {
  readonly name: string;
  readonly carrier: Carrier;
  readonly kind: 'punch' | 'die' | 'finger' | 'other';
  /** Of punches and dies: the station's id. */
  readonly station: string | undefined;
  /** Of sliding ears: as they hang, or pushed out by the sheet, and then by how much they slide. mm */
  readonly ears?: { readonly state: 'hanging' | 'out'; readonly slides: number };
  readonly slabs: readonly Slab[];
  readonly solid: Manifold;
  /** Its corners, as it is drawn. */
  readonly points: readonly Vec3[];
}

const slabSolid = (kernel: Kernel, slab: Slab): Manifold => {
  const flat = section(kernel, slab.polygons);
  const upright = flat.extrude(slab.to - slab.from);
  // the kernel extrudes along its third axis: (x, y, z) there is (back, up, along) here
  const solid = upright.transform([0, 1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, slab.from, 0, 0, 1]);
  flat.delete();
  upright.delete();
  return solid;
};

/** The slabs as one solid, which the caller frees. */
const slabsSolid = (kernel: Kernel, slabs: readonly Slab[]): Manifold => {
  const pieces = slabs.map((s) => slabSolid(kernel, s));
  if (pieces.length === 1) return pieces[0]!;
  const one = kernel.Manifold.union(pieces);
  for (const p of pieces) p.delete();
  return one;
};

const pointsOf = (slabs: readonly Slab[]): Vec3[] =>
  slabs.flatMap((s) => s.polygons.flatMap((p) => p.flatMap((q): Vec3[] => [[s.from, q[0], q[1]], [s.to, q[0], q[1]]])));

export const makeBody = (
  kernel: Kernel,
  pool: Pool,
  slabs: readonly Slab[],
  name: string,
  carrier: Carrier,
  kind: Body['kind'] = 'other',
  station?: string,
  ears?: Body['ears'],
): Body => ({ ...(ears === undefined ? {} : { ears }), name, carrier, kind, station, slabs, solid: pool.keep(slabsSolid(kernel, slabs)), points: pointsOf(slabs) });

const area = (p: readonly Vec2[]): number =>
  p.reduce((sum, a, i) => sum + a[0] * p[(i + 1) % p.length]![1] - a[1] * p[(i + 1) % p.length]![0], 0);

const counterClockwise = (p: readonly Vec2[]): readonly Vec2[] => (area(p) < 0 ? [...p].reverse() : p);

/** What a polygon covers while it is shifted by `by`: both ends, and what each edge passes over. */
const sweptPolygons = (polygon: readonly Vec2[], by: Vec2): (readonly Vec2[])[] => {
  const moved = polygon.map((p): Vec2 => [p[0] + by[0], p[1] + by[1]]);
  const passed = polygon.map((a, i): Vec2[] => {
    const next = (i + 1) % polygon.length;
    return [a, polygon[next]!, moved[next]!, moved[i]!];
  });
  return [polygon, moved, ...passed.filter((p) => Math.abs(area(p)) > 0)].map(counterClockwise);
};

/**
 * What `body` covers while it is shifted by `by` in (along, back, up), as a solid that the caller frees. A shift both
 * along the bed and across it is taken as the two in either order, which covers more.
 */
export const sweptSolid = (kernel: Kernel, body: Body, by: Vec3): Manifold =>
  slabsSolid(
    kernel,
    body.slabs.map((s) => ({
      from: s.from + Math.min(0, by[0]),
      to: s.to + Math.max(0, by[0]),
      polygons:
        by[1] === 0 && by[2] === 0 ? s.polygons : s.polygons.flatMap((p) => sweptPolygons(p, [by[1], by[2]])),
    })),
  );

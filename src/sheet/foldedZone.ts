import { type Vec3, apply, compose } from '../geometry/index.js';
import { alongArc } from './arc.js';
import { bendFrame } from './bendFrame.js';
import type { Developed } from './developed.js';
import type { Bend } from './part.js';

/** Parallels closer than this share of the arc are one: rounding of a reader, far below anything that can be cut. */
const SAME_LEVEL = 1e-7;

/** Two parallels of f and the metal's two ends on each: a quadrilateral in (u, f) with straight sides. */
export interface ZoneQuad {
  readonly f: readonly [number, number];
  /** mm, at f[0] and at f[1]. */
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/**
 * A piece of a folded bend. Corners (from, f0), (to, f0), (to, f1), (from, f1): counter-clockwise seen from the A side.
 */
export interface FoldedStrip extends ZoneQuad {
  readonly A: readonly [Vec3, Vec3, Vec3, Vec3];
  readonly B: readonly [Vec3, Vec3, Vec3, Vec3];
}

/**
 * A bend's zone cut into quadrilaterals between parallels of f: `strips` equal shares of the arc, cut again at each
 * corner of the contours so that no quadrilateral holds a corner inside. Together they are exactly the zone.
 */
export const zoneQuads = (bend: Bend, strips: number): ZoneQuad[] => {
  const levels: number[] = [];
  for (let k = 0; k <= strips; k++) levels.push(k / strips);
  for (const contour of bend.zone) for (const v of contour) levels.push(v.y);
  const sorted = levels.sort((a, b) => a - b).filter((f, k) => k === 0 || f - levels[k - 1]! > SAME_LEVEL);
  const quads: ZoneQuad[] = [];
  for (let k = 0; k + 1 < sorted.length; k++) {
    const [f0, f1] = [sorted[k]!, sorted[k + 1]!];
    const middle = (f0 + f1) / 2;
    const crossings: { readonly at: number; readonly u: readonly [number, number] }[] = [];
    for (const contour of bend.zone) {
      contour.forEach((p, i) => {
        const q = contour[(i + 1) % contour.length]!;
        if (p.y < middle === q.y < middle) return;
        const u = (f: number): number => p.x + ((q.x - p.x) * (f - p.y)) / (q.y - p.y);
        crossings.push({ at: u(middle), u: [u(f0), u(f1)] });
      });
    }
    crossings.sort((a, b) => a.at - b.at);
    for (let c = 0; c + 1 < crossings.length; c += 2) {
      quads.push({ f: [f0, f1], from: crossings[c]!.u, to: crossings[c + 1]!.u });
    }
  }
  return quads;
};

/**
 * The zone of bend `bend` turned through `angle` degrees, as strips with their corners on both faces, in the frame of
 * the plate at side 0. The corners lie on the true arc; between two parallels the arc is left by its chord error.
 */
export const foldedZone = (sheet: Developed, bend: number, angle: number, strips: number): FoldedStrip[] => {
  const it = sheet.part.bends[bend]!;
  const base = bendFrame(it.sides[0].line);
  const half = sheet.part.thickness / 2;
  return zoneQuads(it, strips).map((quad) => {
    const [near, far] = quad.f.map((f) => compose(base, alongArc(sheet, bend, angle, f)));
    const corners = (h: number): [Vec3, Vec3, Vec3, Vec3] => [
      apply(near!, [quad.from[0], 0, h]),
      apply(near!, [quad.to[0], 0, h]),
      apply(far!, [quad.to[1], 0, h]),
      apply(far!, [quad.from[1], 0, h]),
    ];
    return { ...quad, A: corners(half), B: corners(-half) };
  });
};

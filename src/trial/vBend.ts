import type { Planar } from '../geometry/index.js';

/** What a V bend does in one die: the figures that the poses of docs/kinematics.md need. */
export interface VBend {
  readonly kind: 'V';
  /** Flat length of the bend, mm. */
  readonly allowance: number;
  /** Flat metal between the arc and the tangent line on either side: of a hem whose closed arc is longer than its pre-bend's. mm */
  readonly beside: number;
  /** mm from the inside face to the neutral line. */
  readonly neutral: number;
  readonly thickness: number;
  /** Half opening to the points where the shoulder arcs meet the flat top, mm. */
  readonly halfOpening: number;
  readonly shoulderRadius: number;
  /** Degrees of bend angle before the stroke, where an earlier pass has begun the bend; absent: flat. */
  readonly from?: number;
  /** Degrees: made (released) and under load. */
  readonly bendAngle: number;
  readonly bendAngleUnderLoad: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Inside radius at bend angle x degrees (x > 0): the bend keeps its flat length. mm */
export const insideRadiusAt = (bend: Pick<VBend, 'allowance' | 'neutral'>, x: number): number => bend.allowance / radians(x) - bend.neutral;

/** Depth of the inner apex below first touch at bend angle x degrees. mm */
export const depthAt = (bend: VBend, x: number): number => {
  if (x < 1e-9) return 0;
  const b = radians(x) / 2;
  const corner = insideRadiusAt(bend, x) + bend.thickness + bend.shoulderRadius;
  // 1/cos b - 1 written as tan b tan(b/2): no cancellation when the arc is nearly flat and its radius huge
  return Math.tan(b) * (bend.halfOpening - corner * Math.tan(b / 2));
};

/** Up of the inner apex, where the punch tip stands, from the die top. mm */
export const tipAt = (bend: VBend, x: number): number => bend.thickness - depthAt(bend, x);

/**
 * Where the two wings stand at bend angle x: each maps (b, h), b the back coordinate counted from that wing's tangent line
 * when flat and h the height over the middle plane, to (back, up) from the die top.
 */
export const wingsAt = (bend: VBend, x: number): { readonly gauge: Planar; readonly front: Planar } => {
  const b = radians(x) / 2;
  const c = Math.cos(b);
  const s = Math.sin(b);
  if (x < 1e-9) {
    const y = bend.thickness / 2;
    const back = bend.allowance / 2 + bend.beside;
    return { gauge: { c: 1, s: 0, x: back, y }, front: { c: 1, s: 0, x: -back, y } };
  }
  const inside = insideRadiusAt(bend, x);
  const middle = inside + bend.thickness / 2;
  // centre - middle cos b, with the difference inside(1 - cos b) taken first: inside is huge near flat
  const y = tipAt(bend, x) + inside * 2 * Math.sin(b / 2) ** 2 - (bend.thickness / 2) * c + bend.beside * s;
  const back = middle * s + bend.beside * c;
  return { gauge: { c, s, x: back, y }, front: { c, s: -s, x: -back, y } };
};

/** How far sheet, punch and die touch by purpose, from the bending plane. mm */
export const contactReach = (bend: VBend): number => bend.halfOpening + bend.shoulderRadius + bend.thickness;

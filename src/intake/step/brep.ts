import type { Vec3 } from '../../geometry/index.js';

/** The surface under a face. A plane's normal points out of the metal. */
export type Surface =
  | { readonly kind: 'plane'; readonly origin: Vec3; readonly normal: Vec3 }
  | {
      readonly kind: 'cylinder';
      readonly origin: Vec3;
      readonly axis: Vec3;
      readonly radius: number;
      /** The metal lies outside the cylinder: a hole's wall, the inside of a bend. */
      readonly hollow: boolean;
    }
  | { readonly kind: 'other'; readonly name: string; /** Straight lines from one curve to another. */ readonly ruled?: true; readonly sphere?: { readonly centre: Vec3; readonly radius: number } };

/** The curve under an edge, run from `from` to `to`. `points` begins with `from` and ends with `to`. */
export interface Edge {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly curve:
    | { readonly kind: 'line' }
    /** Runs counter-clockwise about `axis`; a full circle has `from` = `to`. */
    | { readonly kind: 'circle'; readonly centre: Vec3; readonly axis: Vec3; readonly radius: number; readonly sweep: number }
    | { readonly kind: 'other' };
  /** The curve cut into chords within `CURVE_CHORD`; a line has its two ends only. */
  readonly points: readonly Vec3[];
}

/** One use of an edge by a face's loop; the face lies to the left, seen from outside the metal. */
export interface EdgeUse {
  readonly edge: number;
  readonly forward: boolean;
}

export interface Face {
  readonly surface: Surface;
  /** mm2 */
  readonly area: number;
  /** The outer boundary is the loop that bounds the largest area: the file does not say which. */
  readonly loops: readonly (readonly EdgeUse[])[];
}

/** A solid's boundary as plain data: millimetres, faces and edges numbered from 0. */
export interface Brep {
  readonly faces: readonly Face[];
  readonly edges: readonly Edge[];
  /** mm3, negative where the solid is inside out. */
  readonly volume: number;
  /** False for a shell that does not bound a solid. */
  readonly solid: boolean;
}

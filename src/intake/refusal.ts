import type { Vec3 } from '../geometry/index.js';
import type { Part } from '../sheet/index.js';
import type { DxfPartFailure } from './readDxfPart.js';

/** Why a body of a file is no part that a brake can bend. */
export type RefusalCode =
  | DxfPartFailure['code']
  | 'no solid'
  | 'empty file'
  | 'open shell'
  | 'free form'
  | 'no constant thickness'
  | 'closed section'
  | 'fused hem'
  | 'bend without plate'
  | 'radius does not fit'
  | 'outline not read';

/** A body's edges as chords, and of the faces that a refusal names the outlines (and the normal of flat ones). mm, the body's own frame. */
export interface Outlines {
  readonly edges: readonly (readonly Vec3[])[];
  readonly marked: readonly { readonly face: number; readonly normal?: Vec3; readonly loops: readonly (readonly Vec3[])[] }[];
}

/** A body that was not read, and why. Faces are numbered from 1 in the order of the file, in the sentence as in `faces`. */
export interface Refusal {
  /** The body's place in the file, from 0; 0 for a file that could not be read at all. */
  readonly index: number;
  readonly code: RefusalCode;
  /** One sentence for the user, naming the face and the measure. */
  readonly sentence: string;
  readonly faces: readonly number[];
  /** The measure that decided, in the unit that the sentence says. */
  readonly measure?: number;
  /** Which body of several: its product's name, else the file's with a number. */
  readonly name?: string;
  /** The unit that the file declares makes no sheet for a brake of it, and none was told: it may be read in another. */
  readonly unitDoubted?: true;
  /** What a picture of it is drawn from, where there is a body with faces. */
  readonly outlines?: Outlines;
}

/** What a file gave: the bodies that are sheet-metal parts, and the others with their reasons. */
export interface Intake {
  /** `sameAs` is the first body of the file that has the same shape: another use of one product. */
  readonly parts: readonly { readonly index: number; readonly part: Part; readonly sameAs?: number }[];
  readonly refused: readonly Refusal[];
}

import type { AllowanceRule } from '../forming/index.js';
import type { Part, Side } from './part.js';

/** What the lines of a drawing's layer are taken for. A bend towards A rises towards whoever looks at the drawing, one towards B falls away. */
export type LayerRole = 'cut' | 'bend' | 'bend A' | 'bend B' | 'ignore';

/** What was told of a bend. */
export interface BendTold {
  /** Degrees turned through. */
  readonly bendAngle?: number;
  readonly direction?: Side;
  /** mm */
  readonly insideRadius?: number;
}

/** How a drawing of a flat is read: what was told; the rest is read from the drawing or guessed, and said so. */
export interface DxfReading {
  readonly from: 'dxf';
  /** mm */
  readonly thickness?: number;
  /** The rule by which the flat was developed: it says how wide each bend's strip is. */
  readonly rule?: AllowanceRule;
  /** By layer key (layer name, with the line type in brackets where its lines bring one of their own). */
  readonly roles?: Readonly<Record<string, LayerRole>>;
  /** The unit the drawing is in, whatever its header says. */
  readonly unit?: Part['unit'];
  /** mm up to which loose ends are joined. */
  readonly gap?: number;
  /** For every bend line of which nothing else is known. */
  readonly bend?: BendTold;
  /** By bend id; goes before what is written on the drawing. */
  readonly bends?: Readonly<Record<string, BendTold>>;
}

/** A part from a typed-in line (docs/profile.md). */
export interface ProfileReading {
  readonly from: 'profile';
  readonly line: string;
}

/** A part from a body of a STEP file. */
export interface StepReading {
  readonly from: 'step';
  /** The body's place in the file, from 0. */
  readonly body: number;
  /** The unit the file is in, whatever it declares. */
  readonly unit?: Part['unit'];
  /** mm, the inside radius told for bends drawn sharp. */
  readonly sharpRadius?: number;
}

/** How a part came to be, so that it can be read again with one thing told otherwise. */
export type Reading = DxfReading | ProfileReading | StepReading;

/** What is on record about the faces of a sheet. */
export interface Marks {
  /** The face that must not be marked. */
  readonly keep?: Side;
  /** The face that the cutting burr is on. */
  readonly burr?: Side;
  /** Degrees from plate 1's x to the rolling direction. */
  readonly rolling?: number;
}

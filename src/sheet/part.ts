import type { AllowanceRule } from '../forming/index.js';
import type { Contour, Vec2 } from '../geometry/index.js';
import type { GeneralClass } from '../metal/index.js';
import type { Marks, Reading } from './reading.js';

/** A and B side: the two faces of the blank. A is +z of every plate's own frame. */
export type Side = 'A' | 'B';

/**
 * One flat region. Its own frame: x, y in the sheet's middle plane, z out of the A side, so the metal fills
 * z = -thickness/2 to +thickness/2. The outline runs counter-clockwise seen from the A side, holes clockwise.
 */
export interface Plate {
  readonly outline: Contour;
  readonly holes: readonly Contour[];
}

/** A directed line in a plate's frame. */
export interface Line {
  readonly from: Vec2;
  readonly to: Vec2;
}

/** Where a bend's zone meets a plate: the tangent line, in that plate's frame. */
export interface BendSide {
  readonly plate: number;
  readonly line: Line;
}

/**
 * Joins two plates. Both lines run the same way with the same length; seen from the A side, plate `sides[0]` lies
 * to the right of its line and plate `sides[1]` to the left of its own. The bend's frame at side 0: origin
 * line.from, u along the line, v its left normal (from plate 0 towards plate 1), w out of the A side: right-handed.
 */
export interface Bend {
  /** 'b1', 'b2', ...: the name on every paper. */
  readonly id: string;
  /** 'bend' by one stroke of a V; 'hem' about 180 degrees; 'rolled' a radius so large that it takes several hits. */
  readonly kind: 'bend' | 'hem' | 'rolled';
  readonly sides: readonly [BendSide, BendSide];
  /** Degrees turned through: 0 flat, 180 folded back. */
  readonly bendAngle: number;
  /** The side that the wings swing towards: the inside of the bend. */
  readonly direction: Side;
  /** mm, as drawn (or as formed, in a trial's own part). */
  readonly insideRadius: number;
  /**
   * The curved metal, unrolled: contours in (u, f), u in mm from line.from along the line, f the share of the arc,
   * 0 at side 0 and 1 at side 1. Counter-clockwise outlines, clockwise holes; straight edges only.
   */
  readonly zone: readonly Contour[];
  /** One of the hits that a bend of large radius is made in, in a trial's own part: of which bend, which of how many, and mm of that bend's inside radius. */
  readonly hit?: { readonly of: string; readonly number: number; readonly count: number; readonly radius: number };
  /** Of a hem as tools make it, in a trial's own part. */
  readonly hem?: HemArc;
}

/**
 * How a hem's arc goes from pre-bent to closed (docs/kinematics.md, 'A hem'). The zone holds all metal that is ever curved:
 * its flat length is the longer of the two lengths here.
 */
export interface HemArc {
  /** Degrees of bend angle: after the pre-bend, released; and under load, up to where the arc keeps one curvature. */
  readonly preBendAngle: number;
  readonly preBendAngleUnderLoad: number;
  /** mm: inside radius after the pre-bend, and the flat lengths that are curved then and when closed. */
  readonly preInsideRadius: number;
  readonly preLength: number;
  readonly closedLength: number;
}

/** What was taken for granted while reading, to be seen and changed by the user. */
export interface Assumption {
  /** A word of a closed list, for programs. */
  readonly code:
    | 'unit'
    | 'healed gap'
    | 'sharp bend'
    | 'bend radius'
    | 'feature left out'
    | 'edge approximated'
    | 'thickness varies'
    | 'rolled'
    | 'profile'
    | 'thickness'
    | 'layers'
    | 'bend angle'
    | 'bend direction'
    | 'rule'
    | 'other';
  /** One sentence, with the measure. */
  readonly sentence: string;
  readonly plates: readonly number[];
  readonly bends: readonly string[];
}

/** What a drawing dimension is picked from. */
export type Feature =
  /** A or B face of a plate. */
  | { readonly kind: 'face'; readonly plate: number; readonly side: Side }
  /** The straight edge of a plate that lies at this point of the plate's frame. */
  | { readonly kind: 'edge'; readonly plate: number; readonly at: Vec2 }
  /** Where a flange is measured to from outside: the outer apex of a bend (index), past 90 degrees its outer tangent. */
  | { readonly kind: 'corner'; readonly plate: number; readonly bend: number };

/** A drawing dimension; its value follows from the part. Read from the first feature's plane to the second feature. */
export interface Dimension {
  /** 'd1', 'd2', ... */
  readonly id: string;
  readonly between: readonly [Feature, Feature];
  /** mm, plus and minus; absent where the drawing names none. */
  readonly tolerance?: number;
  /** The class of ISO 2768-1 that gives the tolerance where none is named. */
  readonly class?: GeneralClass;
}

/** Something on a plate that is no flat metal. The plate goes on under what stands out of it. */
export interface Formed {
  readonly plate: number;
  /**
   * 'raised': pressed out, closed all round (dimple, emboss); 'opened': pressed out and open at an edge or at its top (louvre, collar);
   * 'boss': stands on one face alone (stud, nut, fastener); 'countersink': a hole wider on one face; 'recess': sunk into one face alone.
   */
  readonly kind: 'raised' | 'opened' | 'boss' | 'countersink' | 'recess';
  /** The face that it stands out of, or that it is wider on or sunk into. */
  readonly side: Side;
  /** What it covers, in the plate's frame, counter-clockwise. */
  readonly outline: Contour;
  /** mm that it stands out of that face: 0 for what does not. */
  readonly height: number;
}

/** A part: plates joined by bends into a tree, all of one thickness. A flat sheet has one plate and no bend. */
export interface Part {
  readonly name: string;
  /** mm */
  readonly thickness: number;
  readonly plates: readonly Plate[];
  readonly bends: readonly Bend[];
  readonly assumptions: readonly Assumption[];
  /** The unit that the file was drawn in. */
  readonly unit: 'mm' | 'inch' | 'm' | 'cm';
  /** mm3 as measured by the reader's own kernel, where there was one. */
  readonly volume?: number;
  /** How it was read, where it can be read again with one thing told otherwise. */
  readonly reading?: Reading;
  /** What its user chose for it: the rule of its nominal blank, the metal (id). */
  readonly rule?: AllowanceRule;
  readonly metal?: string;
  readonly marks?: Marks;
  /** What is formed into its plates, or stands on them. */
  readonly formed?: readonly Formed[];
  /** Dimensions of the drawing; where absent, `defaultDimensions` are looked at. */
  readonly dimensions?: readonly Dimension[];
}

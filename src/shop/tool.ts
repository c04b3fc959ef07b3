import type { Contour } from '../geometry/index.js';

/** A length of tool at hand. Ear segments carry a foot that reaches past the body at the outer end. */
export interface Segment {
  /** mm along the bed, foot included. */
  readonly length: number;
  readonly count: number;
  /** Absent for a plain segment; otherwise which end the foot points to, seen by the operator. */
  readonly ear?: {
    readonly hand: 'left' | 'right';
    /** mm by which the foot reaches past the body. */
    readonly reach: number;
    /** mm from the tip (or the die top) that the foot is high. */
    readonly footHeight: number;
    /**
     * Absent for a rigid ear. Else the ear slides on a slant of 45 degrees in its segment: it hangs this many mm lower than
     * the tip and as many further in while nothing bears on it, and the sheet pushes it up and out (docs/kinematics.md).
     */
    readonly slides?: number;
  };
}

/**
 * What an offset punch and its die make together in one stroke: two opposite square bends, the outer flanges parallel. Drawn with the
 * high land to the back, so that the flange towards the gauge comes out higher.
 */
export interface OffsetForm {
  /** mm from one flange's face to the other's: the step of both tools. */
  readonly height: number;
  /** mm of sheet, from and to: the step's walls stand as far apart as the thickest. */
  readonly leastThickness: number;
  readonly mostThickness: number;
  /** mm: inside radius of both bends. */
  readonly insideRadius: number;
}

interface ToolCommon {
  readonly id: string;
  readonly name: string;
  /** Invented for demonstration: shown as such wherever the tool is named. */
  readonly demo: boolean;
  /** Cross-section in (back, up) mm. Punch: origin at the tip's lowest point. Die: origin at the middle of its top face. */
  readonly profile: Contour;
  /** Punch: tip to the shoulder that bears on the clamp. Die: top face to the seat. mm */
  readonly height: number;
  /** N per mm of length. */
  readonly rating: number;
  /** The clamp or seat family that holds it. */
  readonly tang: string;
  /** May it stand the other way round (front and back exchanged)? */
  readonly reversible: boolean;
  readonly segments: readonly Segment[];
  /** kg per metre of length. */
  readonly weight: number;
  /** Price in the rack's currency, for fits; absent when not for sale. */
  readonly price?: number;
  /** Of offset tools alone. */
  readonly offset?: OffsetForm;
}

export interface Punch extends ToolCommon {
  readonly kind: 'punch';
  readonly shape: 'straight' | 'gooseneck' | 'acute' | 'flattening' | 'offset';
  /** mm */
  readonly tipRadius: number;
  /** Included angle of the nose, degrees; 180 for a flattening or an offset punch. */
  readonly includedAngle: number;
}

export interface Die extends ToolCommon {
  readonly kind: 'die';
  readonly shape: 'V' | 'anvil' | 'offset';
  /** V opening in mm and how it is measured; 0 for an anvil or an offset die. */
  readonly v: number;
  readonly vConvention: 'sharp' | 'tangent';
  /** Included angle of the V, degrees; 180 for an anvil or an offset die. */
  readonly includedAngle: number;
  /** Radius of the shoulders, mm. */
  readonly shoulderRadius: number;
}

export type Tool = Punch | Die;

/** Does this punch bend in a V? */
export const bendsInV = ({ shape }: Pick<Punch, 'shape'>): boolean => shape !== 'flattening' && shape !== 'offset';

/** A plate laid under a die (or its holder) to raise it. */
export interface Riser {
  readonly id: string;
  /** mm */
  readonly height: number;
  readonly seat: string;
  /** mm of bed that the risers of this height can carry in all. */
  readonly length: number;
  /** mm of width on the bed. */
  readonly width: number;
}

/** What a tool beyond the rack costs, typed by a person, in the rack's currency; absent where nobody typed it. */
export interface PricesBeyond {
  readonly gooseneck?: number;
  readonly die?: number;
  readonly adapter?: number;
}

export interface Rack {
  readonly id: string;
  readonly name: string;
  readonly demo: boolean;
  readonly currency: string;
  readonly punches: readonly Punch[];
  readonly dies: readonly Die[];
  readonly risers: readonly Riser[];
  readonly pricesBeyond?: PricesBeyond;
}

import type { Contour } from '../geometry/index.js';

/** How an axis of the back gauge is moved. `at` is where a fixed one stands. Travel in mm, speed in mm/s. */
export type Axis =
  | { readonly drive: 'powered'; readonly min: number; readonly max: number; readonly speed: number }
  | { readonly drive: 'by hand'; readonly min: number; readonly max: number; readonly seconds: number }
  | { readonly drive: 'fixed'; readonly at: number };

/** One stop face of a finger. */
export interface FingerFace {
  readonly name: string;
  /** mm behind the finger's reference (X) that this face lies: 0 for the nose. */
  readonly behind: number;
  /** mm above the finger's reference height (R) where the face begins and ends. */
  readonly from: number;
  readonly to: number;
}

export interface Finger {
  /** mm along the bed. */
  readonly width: number;
  /** Cross-section in (back, up) from the reference: X at the nose's face, R at its lower edge of contact. */
  readonly profile: Contour;
  readonly faces: readonly FingerFace[];
}

/** A measured figure, or that nobody measured it. mm */
export type Known = { readonly value: number; readonly source: 'as new' | 'measured' } | { readonly source: 'not known' };

/** One place of a wear map: how much further ram seat and bed seat stand apart there than a straight and parallel pair would. mm */
export interface SeatPlace {
  readonly along: number;
  readonly gap: number;
}

/**
 * The wear of bed and ram seats along the length, or that nobody measured it. `tilt`: can the ram be set out of level to follow it,
 * for each step (two ends of their own), once for a set-up, or not at all?
 */
export type Seats =
  | { readonly source: 'measured'; readonly places: readonly SeatPlace[]; readonly tilt: 'each step' | 'one setting' | 'none' }
  | { readonly source: 'not known' };

/** The fields of a machine that an option replaces; mm. What is absent stays. */
export interface OptionEffect {
  readonly x?: Axis;
  readonly r?: Axis;
  readonly z?: Axis;
  readonly ownX?: { readonly most: number };
  readonly openHeight?: number;
  readonly throat?: number;
  readonly crowning?: 'powered';
  /** s to build one station of tools. */
  readonly stationSeconds?: number;
}

export interface MachineOption {
  readonly id: string;
  readonly name: string;
  readonly price: number;
  /** Absent where the option changes nothing that a machine's data say. */
  readonly effect?: OptionEffect;
}

/**
 * A press brake as data. Frames (mm): `back` positive from the bending plane to the gauge, `along` positive to the
 * operator's right from the bed's middle, `up` positive from the bed's die seat. The upper beam moves.
 */
export interface Machine {
  readonly id: string;
  readonly name: string;
  readonly demo: boolean;
  /** One sentence for a buyer: what this machine is good for. */
  readonly summary: string;
  readonly condition: 'new' | 'reconditioned';
  /** N */
  readonly rating: number;
  /** N per mm that bed and ram bear in one place. */
  readonly ratingPerLength: number;
  /** mm of bed that takes tools. */
  readonly length: number;
  readonly betweenFrames: number;
  /** mm from the bending plane back to the side frames. */
  readonly throat: number;
  /** mm from the die seat to the punch's shoulder seat with the ram at its highest and at its lowest. */
  readonly openHeight: number;
  readonly shutHeight: number;
  readonly cylinders: { readonly spacing: number; readonly synchronisation: 'electronic' | 'torsion bar' };
  /** mm/s */
  readonly speeds: { readonly approach: number; readonly bend: number; readonly return: number };
  /** mm above the sheet where approach turns to bending speed. */
  readonly changePoint: number;
  readonly gauge: {
    /** back of the nose face from the bending plane */
    readonly x: Axis;
    /** up of the finger's reference from the die seat */
    readonly r: Axis;
    /** along, of each finger's middle */
    readonly z: Axis;
    readonly fingers: number;
    readonly finger: Finger;
    /** Bar that carries the fingers: cross-section in (back, up) from the finger's reference, bed-long. */
    readonly beam: Contour;
    /** mm that must stay between the two fingers' middles. */
    readonly apart: number;
    /** Each finger has an X axis of its own; the two may differ by so much. mm */
    readonly ownX?: { readonly most: number };
    /** mm of play of a finger on its carrier with the sheet's touch; mm over 1,000 mm by which the fingers stand out of square. */
    readonly play?: Known;
    readonly squareness?: Known;
  };
  /** Bed-long cross-sections in (back, up). `beam` and `clamp` from the punch's shoulder seat, `bed` from the die seat. */
  readonly beam: readonly Contour[];
  readonly clamp: readonly Contour[];
  readonly bed: readonly Contour[];
  /** The punch tangs it clamps and the die seats it takes. */
  readonly clampFamilies: readonly string[];
  readonly seatFamilies: readonly string[];
  readonly crowning: 'powered' | 'by hand' | 'none';
  /** s to build one station of tools, where the clamps make it another than the usual. */
  readonly stationSeconds?: number;
  /** mm of the die seat above the floor. */
  readonly bedHeight: number;
  /** mm, of one axis come back to one place. */
  readonly repeatability: { readonly ram: Known; readonly x: Known; readonly r: Known };
  /** Absent on a new machine: its seats are taken as straight. On a used one, absent is not known. */
  readonly seats?: Seats;
  /** What its condition record says that everybody who plans on it must read, one sentence each. */
  readonly beware?: readonly string[];
  readonly options: readonly MachineOption[];
  readonly price: number;
  readonly currency: string;
  readonly site: {
    readonly mass: number;
    readonly footprint: readonly [number, number];
    readonly height: number;
    readonly supply: string;
  };
}

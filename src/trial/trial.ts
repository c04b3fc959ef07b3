import type { ClosedForm, Crowning, DeductionAnswer, Range, StepLimit, TestStripPlan } from '../forming/index.js';
import type { Vec3 } from '../geometry/index.js';
import type { GeneralClass } from '../metal/index.js';
import type { Developed, Side } from '../sheet/index.js';
import type { Die, Machine, Punch, Riser } from '../shop/index.js';

/**
 * The record of one part tried on one machine: all that the papers print, the pages draw and the proof replays.
 * Self-contained plain data. Poses follow docs/kinematics.md.
 */
export interface Trial {
  readonly format: 'brakewright trial 1';
  readonly verdict: 'makes' | 'makes with remedy' | 'does not make' | 'not decided';
  /** The part as these tools form it (radii formed, outside flange lengths as drawn), and each bend's flat length. */
  readonly sheet: Developed;
  /** Id of the metal, its name as printed, and its density, kg/m3, where it was kept. */
  readonly metal: { readonly id: string; readonly name: string; readonly density?: number };
  readonly quantity: number;
  /** Class of ISO 2768-1 that dimensions without a tolerance of their own were asked to hold; absent where none was. */
  readonly toleranceClass?: GeneralClass;
  readonly machine: Machine;
  /** Every tool and riser that stands in the layout. */
  readonly punches: readonly Punch[];
  readonly dies: readonly Die[];
  readonly risers: readonly Riser[];
  readonly stations: readonly Station[];
  readonly steps: readonly Step[];
  /** Predicted making time of one part, set-up shared over the quantity. */
  readonly seconds: number;
  readonly timeModel: readonly TimePiece[];
  readonly computeSeconds: number;
  /** A lower bound on `seconds` over all plans of the model; equal to it when `proven`. */
  readonly bound: number;
  readonly proven: boolean;
  /** What `proven` and `bound` speak of, in a sentence. */
  readonly model: string;
  readonly reasons: readonly Reason[];
  /** Reasons for which the told ones left no room but which a remedy may lift: that no finger reached the sheet. */
  readonly untold?: readonly Reason[];
  readonly remedies: readonly Remedy[];
  /** Which changes were looked for and do not help, one sentence; absent where none was looked for or one does. */
  readonly inVain?: string;
  /** Present where some of the changes that may help were not settled, as `inVain` says: one of them may. */
  readonly remediesCut?: true;
  readonly proof: ProofSummary;
  /** Clearance questions asked and answered from memory, states taken: for benchmarks. */
  readonly counts: Readonly<Record<string, number>>;
  /** Present when a blank already cut was given: what each flange comes out wrong by. */
  readonly misses?: readonly { readonly bend: string; readonly flange: string; readonly miss: number }[];
  /** kg of the blank, and what the shop lets one person handle (null where it says nothing); is a second person or a lifting aid asked? */
  readonly lifting?: { readonly kilograms: number; readonly onePerson: number | null; readonly help: boolean };
  /** What each dimension is predicted to come out as on this machine by these stops in this order. */
  readonly dimensions?: readonly PredictedDimension[];
  readonly warnings: readonly string[];
  readonly assumptions: readonly string[];
}

/** Plus and minus, mm: the root of the sum of squares of all contributions' half ranges, and their plain sum. */
export interface Spread {
  readonly rootSumSquare: number;
  readonly worstCase: number;
}

/** What one source of error does to one dimension. */
export interface Contribution {
  readonly what: string;
  /** The stroke, edge or set-up that it belongs to, '' for what all share. */
  readonly at: string;
  /** 'systematic' errors are alike on every part and corrected after the first piece; 'scatter' stays. */
  readonly kind: 'systematic' | 'scatter';
  /** Half range of the source in its unit, and what it makes of the dimension in mm. */
  readonly half: number;
  readonly unit: string;
  readonly size: number;
  /** Where the half range comes from. */
  readonly mark: string;
}

export interface PredictedDimension {
  readonly id: string;
  /** From what to what. */
  readonly what: string;
  /** mm, as these tools form the part. */
  readonly value: number;
  /** mm, as drawn, where the tools form it otherwise: the tolerance is about this, and the batch's spread about `value`. */
  readonly drawn?: number;
  /** mm, plus and minus, null where none is asked; and who asks it. */
  readonly tolerance: number | null;
  readonly askedBy: string;
  /** The first piece sees all errors, the batch after its correction only the scatter. */
  readonly firstPiece: Spread;
  readonly batch: Spread;
  /** Largest first. */
  readonly contributions: readonly Contribution[];
  /** Sources that matter and that nobody measured on this machine. */
  readonly notKnown: readonly string[];
  /** Of the batch's spread by the rule asked for, and of how far the formed length lies off the drawn one. */
  readonly verdict: 'holds' | 'does not hold' | 'not known' | 'no tolerance';
  /** Where this dimension made the plan another than the quickest: which choices, in a sentence or two. */
  readonly forced?: string;
}

export interface ProofSummary {
  readonly checked: boolean;
  readonly passed: boolean;
  /** mm, over all steps, and where. */
  readonly smallestClearance: number | null;
  readonly where?: string;
  /** The furthest that any point moved between two checked poses, mm. */
  readonly largestMotion: number | null;
  readonly findings: readonly string[];
}

/** A tool segment standing in a station; `from` in mm along the bed. */
export interface Placed {
  readonly length: number;
  readonly from: number;
  readonly ear?: 'left' | 'right';
}

/** A punch and die pair at a place along the bed. */
export interface Station {
  readonly id: string;
  readonly punch: string;
  readonly die: string;
  /** 'as drawn': the profile's +x to the back; 'reversed': front and back exchanged. */
  readonly punchFacing: 'as drawn' | 'reversed';
  readonly dieFacing: 'as drawn' | 'reversed';
  readonly punchSegments: readonly Placed[];
  readonly dieSegments: readonly Placed[];
  /** mm of risers under the die, 0 for none. */
  readonly riser: number;
  /** mm: up of the die's top face from the die seat = die height + riser. */
  readonly dieTop: number;
  /** mm: die top + punch height: the shoulder seat's up when the punch just touches the bare die top plane. */
  readonly stackHeight: number;
  /** mm that the tip may enter this die with no sheet in it. */
  readonly emptyLimit: number;
}

/** One move of the part with the ram at rest. */
export type Move =
  | { readonly kind: 'shift'; readonly by: Vec3 }
  /** About the line through the bend's middle parallel to the bed; degrees, positive lifts the gauge side. */
  | { readonly kind: 'tilt'; readonly degrees: number };

export interface Stop {
  /** 'edge' a plate's edge, 'flange' the face of a bent plate, 'none' placed by eye to a scribed line or front stop. */
  readonly kind: 'edge' | 'flange' | 'none';
  /** In words: which edge or flange. */
  readonly edge: string;
  /** Index of the plate that touches. */
  readonly plate: number;
  /** Name of the finger's face, and 'edge' or 'outer face' of the sheet in `edge`. */
  readonly face: string;
  /** mm: back of the touching face from the bending plane; up of the finger's reference from the die seat. */
  readonly x: number;
  /** mm: what the X axis is set to: the nose's place, less than `x` where a face further back touches. */
  readonly axisX: number;
  readonly r: number;
  /** mm along, middle of each finger, left and right. */
  readonly z: readonly number[];
  /** mm by which the right finger, on an X axis of its own, stands further back than the left one: `x` and `axisX` are the left one's. */
  readonly skew?: number;
  /** How the sheet is placed along the bed, in words with its mm. */
  readonly sideways: string;
  /** mm by which the gauge moves back before the stroke, 0 if it may stay. */
  readonly retract: number;
}

export interface Margin {
  readonly name: string;
  readonly value: number;
  readonly limit: number;
  readonly unit: string;
  /** Source or 'common practice, no source'. */
  readonly source: string;
}

export interface TimePiece {
  readonly what: string;
  readonly seconds: number;
}

/** What forming says of a V bend's step beside the strip's own figures. */
export interface StepForming {
  /** Published rules by their source, each beside the strip's figure. */
  readonly byRule: readonly ClosedForm[];
  /** Every limit of the step with its margin and source, the tightest first. */
  readonly limits: readonly StepLimit[];
  /** What the stock's scatter does to bend angle (released), force and flange; null where it is not worked out. */
  readonly range: {
    readonly bendAngleReleased: Range;
    readonly peakForcePerLength: Range;
    readonly flangeChange: Range;
  } | null;
  readonly rangeWords: string;
  /** Where the depth takes a sheet that the standards let through onto the die's walls, as the end of a sentence. */
  readonly bottoms?: string;
  /** What allowance and deduction of the step rest on. */
  readonly deduction: { readonly source: DeductionAnswer['source']; readonly spread: number | null; readonly words: string };
  /** Why this V and punch, and what the next smaller and larger V would do. */
  readonly whyV: readonly string[];
  /** The strip to bend and measure first; null where its second bend cannot be made. */
  readonly testStrip: TestStripPlan | null;
  /** mm: how ram and bed give way along the bend, the device's setting and what it leaves; degrees that the rest is worth. */
  readonly crowning: Crowning & { readonly angleSpread: number };
}

/** What forming says of a stroke that is no V bend, by rules. */
export interface StepPressing {
  /** N/mm in the thickest and strongest sheet that the metal's standards let through, and by which rule. */
  readonly strongest: { readonly forcePerLength: number; readonly words: string };
  readonly limits: readonly StepLimit[];
}

/** One stroke. */
export interface Step {
  readonly number: number;
  readonly kind: 'V bend' | 'hem close' | 'offset bend';
  /** Of a bend made in two passes: the stroke that begins it, or the one that finishes it. */
  readonly pass?: 1 | 2;
  /** Of a bend of large radius: which of how many hits. */
  readonly hit?: { readonly of: string; readonly number: number; readonly count: number };
  /** Ids of the bends made. */
  readonly bends: readonly string[];
  readonly station: string;
  readonly punch: string;
  readonly die: string;
  readonly facing: 'as drawn' | 'reversed';
  readonly sideUp: Side;
  /** Which side of the bend (index into its `sides`, the first bend of the group) lies towards the gauge. */
  readonly gaugeSide: 0 | 1;
  /** mm along the bed where the first bend's `sides[0].line.from` comes to lie. */
  readonly place: number;
  /**
   * mm back of a tangent line: closing a hem, that of the plate that lies on the anvil; an offset bend, that of the flange that lies on the
   * high land, beyond the second bend named. Absent: the bend's middle lies on the bending plane.
   */
  readonly lineBack?: number;
  readonly stop: Stop;
  /** Degrees: released, its included angle (180 - bend angle), and under load. */
  readonly bendAngle: number;
  readonly includedAngle: number;
  readonly bendAngleUnderLoad: number;
  readonly springback: number;
  /** mm: inside radius as formed, and the flat length and deduction of the bend. */
  readonly insideRadius: number;
  readonly allowance: number;
  readonly deduction: number;
  /** mm from first touch of punch and sheet. */
  readonly depth: number;
  /** mm up of the punch tip from the die seat at the lowest point of the stroke. */
  readonly ramPosition: number;
  /** mm between punch tip and die top with the ram open: for the way in, and for the way out. */
  readonly ramOpening: number;
  readonly ramOpeningOut: number;
  /** mm above the die top at which approach turns to bending speed. */
  readonly speedChange: number;
  /** N in all, and N/mm. */
  readonly force: number;
  readonly forcePerLength: number;
  /** N, left (negative along) and right cylinder. */
  readonly cylinderForces: readonly [number, number];
  /** mm: crowning at the middle of the bed; null where it was not calculated. In words what to do about it. */
  readonly crowning: number | null;
  readonly crowningWords: string;
  /** mm: the smallest distance seen between bodies that shall not touch, over the whole step, by planner or proof; 20 when nothing came nearer. */
  readonly clearance: number;
  /** mm: how far from the bending plane contact of sheet, punch and die is the purpose of the stroke. */
  readonly contactReach: number;
  readonly margins: readonly Margin[];
  /** Absent from strokes that are no V bends. */
  readonly forming?: StepForming;
  /** Absent from V bends. */
  readonly pressing?: StepPressing;
  readonly wayIn: readonly Move[];
  readonly wayOut: readonly Move[];
  /** What to do with the sheet, in words. */
  readonly words: string;
  /** The flange to measure after the stroke: outside length in mm. */
  readonly measure: {
    readonly what: string;
    readonly length: number;
    /** mm, plus and minus; null where none is asked. */
    readonly tolerance: number | null;
    /** mm, plus and minus (root of the sum of squares): what the first piece, and the batch after correction, is expected to show. */
    readonly firstPiece?: number;
    readonly batch?: number;
  };
  readonly time: readonly TimePiece[];
}

/** The smallest set of facts that rules something out. */
export interface Reason {
  readonly code:
    | 'clearance'
    | 'plate on plate'
    | 'way in'
    | 'way out'
    | 'no stop'
    | 'bed length'
    | 'between frames'
    | 'force'
    | 'tool rating'
    | 'daylight'
    | 'shut height'
    | 'short flange'
    | 'no tool'
    | 'no segments'
    | 'one ram'
    | 'radius'
    | 'die angle'
    | 'minimum radius'
    | 'rolled'
    | 'hem'
    | 'offset bend'
    | 'floor'
    | 'limit'
    | 'no order'
    | 'nothing to bend'
    | 'blank'
    | 'weight'
    | 'tolerance';
  /** At most two sentences; names the bodies and the millimetres. */
  readonly sentence: string;
  readonly bends: readonly string[];
  /** Bends that are made, and that are not, in the partial fold that conflicts. */
  readonly made?: readonly string[];
  readonly unmade?: readonly string[];
  readonly bodies?: readonly string[];
  /** mm (or the unit that the sentence names). */
  readonly by?: number;
}

export interface Remedy {
  readonly sentence: string;
  readonly confirmed: boolean;
  /** Of all items together; absent where one has none, or where they are in several currencies. */
  readonly price?: number;
  /** Of that price; absent where nothing is to be paid. */
  readonly currency?: string;
  /** What has to be had or changed; all of it together. */
  readonly items?: readonly RemedyItem[];
  /** s a part with it, by the plan that confirms it. */
  readonly seconds?: number;
  /** Predicted with it, the set-up left out; absent where no plan of a fit confirms it. */
  readonly partsAnHour?: number;
}

/** One thing that lifts a reason. A tool beyond the rack comes with its data, so that the plan can be made again. */
export interface RemedyItem {
  readonly kind: 'option' | 'daylight' | 'punch' | 'die' | 'adapter' | 'radius' | 'tolerance' | 'relief' | 'split' | 'two passes' | 'scribed line';
  readonly id: string;
  readonly name: string;
  /** As entered; null where nobody typed one. */
  readonly price: number | null;
  /** Of that price: the machine's for its options, the rack's for tools beyond it; absent for what is not bought. */
  readonly currency?: string;
  readonly tool?: Punch | Die;
}

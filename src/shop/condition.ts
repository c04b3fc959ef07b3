/** Null throughout: nobody measured it, which is never the same as nothing found and never as new. */
export type Reading = number | null;

/** Heights of bed seat and ram seat at one place, up from one level line common to both, the ram at pressing height. mm */
export interface WearReading {
  readonly along: number;
  readonly bed: Reading;
  readonly ram: Reading;
}

export interface Instrument {
  readonly what: string;
  /** Day of its last calibration, YYYY-MM-DD. */
  readonly calibrated: string | null;
}

/** A strip bent with one depth and measured at three places along the bed. Lengths mm. */
export interface TestBend {
  readonly load: 'light' | 'heavy';
  readonly metal: string;
  readonly thickness: number;
  readonly v: number;
  readonly length: number;
  /** Degrees included, at the operator's left, in the middle and at the right. */
  readonly includedAngles: { readonly left: Reading; readonly middle: Reading; readonly right: Reading };
}

/** What was found of a machine on one day. */
export interface ConditionState {
  /** YYYY-MM-DD */
  readonly date: string;
  readonly by: string;
  readonly instruments: readonly Instrument[];
  readonly throat: 'nothing found' | 'crack found' | 'weld repair found' | null;
  /** Where, and how it was looked for. */
  readonly throatWords: string;
  /** mm that the ram sank in so many seconds at rest. */
  readonly ramDrift: { readonly mm: number; readonly seconds: number } | null;
  /** N */
  readonly forceReached: Reading;
  /** mm */
  readonly guideClearance: Reading;
  /** From left to right. */
  readonly wear: readonly WearReading[];
  /** mm over 1,000 mm that the fingers stand out of square; mm of play of a finger. */
  readonly squareness: Reading;
  readonly play: Reading;
  /** mm, plus and minus, of one axis come back to one place. */
  readonly repeatability: { readonly ram: Reading; readonly x: Reading; readonly r: Reading; readonly z: Reading };
  readonly crowningWorks: boolean | null;
  readonly tiltWorks: boolean | null;
  readonly guarding: 'present' | 'missing' | null;
  /** ms, as tested by a competent person, who is named. */
  readonly stoppingTime: Reading;
  readonly testedBy: string;
  readonly testBends: readonly TestBend[];
  readonly remarks: string;
}

/** The record of a machine taken in used: as found, and after an overhaul. */
export interface ConditionRecord {
  readonly machineId: string;
  /** Marked as invented, for demonstration. */
  readonly demo: boolean;
  /** As the plate says. */
  readonly plate: { readonly serial: string; readonly year: Reading; readonly force: Reading; readonly mass: Reading };
  readonly manuals: 'complete' | 'in part' | 'missing' | null;
  readonly supply: string;
  readonly asFound: ConditionState;
  /** What was done, in words. */
  readonly overhaul: string;
  readonly overhauled: ConditionState | null;
}

/** The state that promises rest on: after an overhaul only what was measured again counts. */
export const stateOf = (record: ConditionRecord): ConditionState => record.overhauled ?? record.asFound;

import { type ConditionRecord, type Reading, stateOf } from './condition.js';
import type { Machine } from './machine.js';
import { type SeatFit, seatFit } from './seatFit.js';
import { type BestPlace, bestPlace } from './seatPlace.js';
import { withCondition } from './withCondition.js';

/** A source whose figure is wanted for a promise of tolerance and was not measured. */
export interface NotMeasured {
  readonly what: string;
  /** What cannot be promised without it. */
  readonly so: string;
}

export interface TestBendFigure {
  readonly load: 'light' | 'heavy';
  /** Degrees of included angle from the least to the most of the three places; null where one was not measured. */
  readonly spread: Reading;
  /** Degrees that the middle is more open than the mean of the ends. */
  readonly middleOpen: Reading;
}

/** What follows from a condition record. mm unless said; every `left` is plus and minus. */
export interface ConditionFigures {
  readonly asOf: 'as found' | 'after overhaul';
  /** Over all the bed that was measured: as it is, and with the tilt and crowning that were found to work. Null without a map. */
  readonly corrected: SeatFit | null;
  /** What is counted on to correct it: there, and found to work. */
  readonly works: { readonly tilt: boolean; readonly crowning: boolean };
  /** The same length of bed in its middle, and at the place where it meets least wear. */
  readonly length: number;
  readonly inTheMiddle: SeatFit | null;
  readonly elsewhere: BestPlace | null;
  /** What standing at that place in place of the middle takes off what is left. */
  readonly avoided: Reading;
  /** What no placing and no setting takes away: the ram's own repeatability. */
  readonly scatter: Reading;
  /** mm that the ram sinks in one second at rest. */
  readonly driftPerSecond: Reading;
  readonly testBends: readonly TestBendFigure[];
  readonly notMeasured: readonly NotMeasured[];
  /** Instruments without a calibration day, by name. */
  readonly uncalibrated: readonly string[];
}

/** Derived figures of a record for work of this length along the bed. */
export const conditionFigures = (machine: Machine, record: ConditionRecord, length: number): ConditionFigures => {
  const state = stateOf(record);
  const worn = withCondition(machine, record);
  const { seats } = worn;
  const follow = { tilt: seats?.source === 'measured' && seats.tilt !== 'none', crowning: worn.crowning !== 'none' };
  const measured = seats?.source === 'measured' ? seats : null;
  const ends = measured && ([measured.places[0]!.along, measured.places.at(-1)!.along] as const);
  const lacks = (reading: unknown, what: string, so: string): NotMeasured[] => (reading === null ? [{ what, so }] : []);
  const { repeatability: r } = state;
  const inTheMiddle = measured && seatFit(worn, measured, [-length / 2, length / 2], follow);
  const elsewhere = bestPlace(worn, length);
  const bends = state.testBends.map(({ load, includedAngles: { left, middle, right } }): TestBendFigure => {
    if (left === null || middle === null || right === null) return { load, spread: null, middleOpen: null };
    return { load, spread: Math.max(left, middle, right) - Math.min(left, middle, right), middleOpen: middle - (left + right) / 2 };
  });
  return {
    asOf: record.overhauled === null ? 'as found' : 'after overhaul',
    corrected: measured && seatFit(worn, measured, ends!, follow),
    works: follow,
    length,
    inTheMiddle,
    elsewhere,
    scatter: r.ram,
    driftPerSecond: state.ramDrift && state.ramDrift.mm / state.ramDrift.seconds,
    testBends: bends,
    avoided: inTheMiddle && elsewhere && Math.max(0, inTheMiddle.left - elsewhere.fit.left),
    notMeasured: [
      ...lacks(measured, 'wear of bed and ram seats', 'no tolerance that hangs on a bend angle'),
      ...lacks(r.ram, 'repeatability of the ram', 'no tolerance that hangs on a bend angle'),
      ...lacks(r.x, 'repeatability of X', 'no tolerance of a flange'),
      ...lacks(r.r, 'repeatability of R', 'no tolerance where a sloping face is the stop'),
      ...lacks(state.play, 'play of a finger', 'no tolerance of a flange'),
      ...lacks(state.squareness, 'squareness of the gauge', 'no tolerance across the part before a first piece'),
      ...lacks(r.z, 'repeatability of Z', 'nothing on the sideways place of a part'),
      ...lacks(state.forceReached, 'force reached', 'the rating is taken from the plate'),
      ...lacks(state.throat, 'cracks or weld repair at the throat', 'no work before it was looked at'),
      ...lacks(state.ramDrift, 'ram drift under hold', 'nothing on a hold in the stroke'),
      ...lacks(state.guideClearance, 'clearance in the guides', 'nothing on how the ram keeps its place front to back'),
      ...(machine.crowning === 'none' ? [] : lacks(state.crowningWorks, 'crowning', 'it is not counted on')),
      ...lacks(state.tiltWorks, 'tilt of the ram', 'it is not counted on'),
      ...(['light', 'heavy'] as const).filter((load) => !bends.some((b) => b.load === load && b.spread !== null))
        .map((load): NotMeasured => ({ what: `test bend at ${load} load, left, middle and right`, so: 'the wear map is not confirmed by a bend' })),
      ...lacks(state.guarding, 'guarding', 'it does not run before it is fitted and tested'),
      ...lacks(state.stoppingTime, 'stopping time', 'no guarding distance'),
    ],
    uncalibrated: state.instruments.filter((i) => i.calibrated === null).map((i) => i.what),
  };
};

export type {
  Margin, Move, Placed, ProofSummary, Reason, Remedy, RemedyItem, Station, Step, StepForming, StepPressing, Stop, TimePiece, Trial,
} from './trial.js';
export type { Replaceable, Searched, TrialHooks, TrialInput } from './input.js';
export { airBendKept } from './airBendKept.js';
export { V_LEAST, V_MOST } from './limits.js';
export { planTrial } from './planTrial.js';
export type { InTwo } from './twoPasses.js';
export type { Wishes } from './wishes.js';
export { describeDimension } from './dimensionWords.js';
export { listed } from './listed.js';
export { DAYLIGHT } from './leastOpening.js';
export { SET_BY_HAND, TIME, stationSeconds } from './time.js';
export { type SharedLayout, type SharedPart, sharedLayout } from './shared/sharedLayout.js';

export { type Alternative, alternatives } from './alternatives.js';
export { needsProof, unproved } from './afterProof.js';
export { type Bought, type Cheapest, type FitBoard, fitBoard } from './fitBoard.js';
export { type FitCell, fitCell } from './fitCell.js';
export type { FitMargin, MarginKind } from './fitMargins.js';
export { type FitAsked, fitTrial } from './fitTrial.js';
export { type PlanAndProveHooks, planAndProve } from './planAndProve.js';
export { type TightMargin, tightestMargin } from './tightestMargin.js';

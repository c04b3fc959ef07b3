export { type Alternative, alternatives } from './alternatives.js';
export { needsProof, unproved } from './afterProof.js';
export { type PlanAndProveHooks, planAndProve } from './planAndProve.js';
export { type TightMargin, tightestMargin } from './tightestMargin.js';

export {
  type AllowanceRule, allowanceByRule, allowanceFrom, deductionFrom, dinK, kFactorOf, type OutsideConvention,
  outsideConvention, setback,
} from './allowance.js';
export { airBend, type AirBend, type AirBendInput, type AirBendReason, type AirBendResult } from './airBend.js';
export { type Beam, beamDeflection, type Deflection, plateBeam, type SpreadLoad } from './beam.js';
export { cylinderForces, type CylinderForces } from './cylinders.js';
export { forceFromMoment, leverArm, linearHardeningForce, oehlerForce, textbookForce } from './force.js';
export { closedHemDeduction, hemCloseForce } from './hem.js';
export { gardinerRatio, legRelease, springbackFactor, toolRadiusByFactor } from './springback.js';
export {
  bothOpenings, closedFormDepth, halfOpening, legReserve, radiusFromDepth, type VConvention, type Vee,
} from './vee.js';

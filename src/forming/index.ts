export {
  type AllowanceRule, allowanceByRule, allowanceFrom, deductionFrom, dinDeduction, dinK, kFactorOf, mouldLineSetback, type OutsideConvention, outsideConvention,
  setback, squareDeduction,
} from './allowance.js';
export { airBend, airBendAtDepth, USUAL_FRICTION } from './airBend.js';
export { airBendCurve, type AirBendCurve, type CurvePoint } from './airBendCurve.js';
export type {
  AirBend, AirBendDepthInput, AirBendInput, AirBendReason, AirBendResult, AirBendSetup,
} from './airBendTypes.js';
export { CAVEAT } from './caveat.js';
export { type Beam, beamDeflection, type Deflection, plateBeam, type SpreadLoad } from './beam.js';
export { type Crowning, type CrowningDevice, crowningFor, type CrowningShape } from './crowning.js';
export { bendRange, type BendRange, type BendRangeResult, type Range, type Scatter } from './bendRange.js';
export { type ClosedForm, closedForms } from './closedForms.js';
export { cylinderForces, type CylinderForces } from './cylinders.js';
export { deductionLimit } from './deductionLimit.js';
export { deductionsFromCsv, deductionsToCsv, type DeductionCsv } from './deductionCsv.js';
export {
  type DeductionAnswer, deductionFor, type DeductionQuery, fittedK, type FittedK, type MeasuredDeduction, spreadOf, withDeductions,
} from './deductionTable.js';
export { fittedByTools, type FittedTools } from './fittedByTools.js';
export { forceFromMoment, leverArm, linearHardeningForce, oehlerForce, textbookForce } from './force.js';
export { closedHemDeduction, hemCloseForce, hemMinimumRadius } from './hem.js';
export { type PlaneStrainArc, planeStrainArc } from './planeStrainArc.js';
export { gardinerRatio, legRelease, springbackFactor, toolRadiusByFactor } from './springback.js';
export { type LinearHardeningBend, linearHardeningBend } from './linearHardeningBend.js';
export { type FittedMetal, type FittedMetalResult, type MeasuredBend, metalFromBends } from './metalFromBends.js';
export { minimumFlange, type MinimumFlange } from './minimumFlange.js';
export { FORCE_BY_STOCK, forceByStock, otherStrokes, type PressingFactor, pressingForce } from './pressing.js';
export { crowningOf, degreesPerMm, type StepLimit, stepLimits, type StepSituation } from './stepLimits.js';
export { reliefHole, type ReliefHole } from './reliefHole.js';
export { sectionBeam } from './sectionBeam.js';
export { rangeInWords } from './rangeInWords.js';
export { type StockRange, stockRange } from './stockRange.js';
export { deductionFromStrip, testStripFor, type TestStripPlan, testStripSize, type TestStripSize } from './testStrip.js';
export {
  type DieData, explainChosenV, explainV, type PunchData, type ToolChoice, type VExplanation, type VQuestion,
} from './vChoice.js';
export {
  bothOpenings, closedFormDepth, depthSensitivity, halfOpening, legReserve, radiusFromDepth, type VConvention, type Vee,
} from './vee.js';
export { DEFAULT_K, NAMED_RULES, ruleNamed } from './namedRules.js';

export type {
  Band, Family, GaugeSystem, Grain, HardeningCurve, Mark, Metal, MinRadius, Source, ThicknessStandard,
} from './metal.js';
export { flowStress, initialYield, proofStress, scaleCurve, swiftFromTensile, tensileOf } from './curve.js';
export { type GaugeThickness, gaugesOf, gaugeThickness } from './gauge.js';
export { angularTolerance, type GeneralClass, type GeneralTolerance, linearTolerance } from './generalTolerance.js';
export { metals, metalById } from './metals.js';
export { type MinimumRadius, minimumRadius, steelMinimumRadius } from './minimumRadius.js';
export { measured, metalFromTensileTest, metalOfStrength, type OwnMetal, type TensileTest } from './ownMetal.js';
export { radiusFromReduction, TEXTBOOK_RADII } from './textbookRadii.js';
export { type ThicknessClass, type ThicknessTolerance, thicknessTolerance } from './thicknessTolerance.js';

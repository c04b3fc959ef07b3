export type {
  Band, Family, GaugeSystem, Grain, HardeningCurve, Mark, Metal, MinRadius, Source, ThicknessStandard,
} from './metal.js';
export { flowStress, initialYield, proofStress, scaleCurve, swiftFromTensile, tensileOf } from './curve.js';
export { metals, metalById } from './metals.js';
export { type MinimumRadius, minimumRadius, steelMinimumRadius } from './minimumRadius.js';

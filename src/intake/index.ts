export type { Intake, Outlines, Refusal, RefusalCode } from './refusal.js';
export { type ReadStepOptions, closeStepReader, readStep, startStepReader } from './step/reader.js';
export { type BlankDxfFailure, type BlankDxfOptions, type BlankDxfResult, type CutBlank, readBlankDxf } from './readBlankDxf.js';
export { dxfReadingSchema, ruleSchema } from './dxfReadingSchema.js';
export { readDxfAside, readOutlineAside } from './readDxfAside.js';
export { type DxfPartFailure, type DxfPartResult, readDxfPart } from './readDxfPart.js';
export { partOfProfile } from './partOfProfile.js';
export { profileSchema } from './profileSchema.js';
export { foldedStep } from './step/foldedStep.js';

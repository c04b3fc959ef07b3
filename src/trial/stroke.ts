import type { Planar } from '../geometry/index.js';
import { type HemClose, hemTipAt, hemWingsAt } from './hemClose.js';
import { type OffsetBend, offsetTipAt, offsetWingsAt } from './offsetBend.js';
import { type VBend, contactReach as vReach, tipAt as vTipAt, wingsAt as vWingsAt } from './vBend.js';

/** What one stroke does with the running bend: each kind has its own motion (docs/kinematics.md). */
export type Stroke = VBend | HemClose | OffsetBend;

/** Where the two wings stand at bend angle x, from the die top: see `vBend.ts`, `hemClose.ts` and `offsetBend.ts`. */
export const wingsAt = (stroke: Stroke, x: number): { readonly gauge: Planar; readonly front: Planar } =>
  stroke.kind === 'V' ? vWingsAt(stroke, x) : stroke.kind === 'offset' ? offsetWingsAt(stroke, x) : hemWingsAt(stroke, x);

/** Up of the punch's tip or face from the die top at bend angle x. mm */
export const tipAt = (stroke: Stroke, x: number): number => (stroke.kind === 'V' ? vTipAt(stroke, x) : stroke.kind === 'offset' ? offsetTipAt(stroke, x) : hemTipAt(stroke, x));

/** How far sheet, punch and die touch by purpose, from the bending plane. mm */
export const contactReach = (stroke: Stroke): number => (stroke.kind === 'V' ? vReach(stroke) : (stroke.kind === 'offset' ? stroke.land : stroke.face) + stroke.thickness);

/** Degrees of bend angle before the stroke. */
export const startOf = (stroke: Stroke): number => stroke.from ?? 0;

/** Up of the punch from the die top when it first touches the sheet. mm */
export const touchOf = (stroke: Stroke): number => tipAt(stroke, startOf(stroke));

/** mm that the punch goes down from first touch. */
export const travelOf = (stroke: Stroke): number => touchOf(stroke) - tipAt(stroke, stroke.bendAngleUnderLoad);

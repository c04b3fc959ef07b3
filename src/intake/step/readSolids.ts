import type { Intake } from '../refusal.js';
import { type IntakeRequest, intakeOf } from './intakeOf.js';
import type { Kernel } from './kernel.js';
import { loadAsWritten, loadStep } from './load.js';

/** The bodies of a STEP file as parts: as the file writes them, and only where one of them is not sound or no part, as the kernel mends them. */
export const readSolids = (oc: Kernel, bytes: Uint8Array, request: IntakeRequest): Intake => {
  const bodies = loadAsWritten(oc, bytes);
  if (bodies !== undefined && bodies.length > 0) {
    const intake = intakeOf({ bodies }, request);
    if (intake.refused.length === 0) return intake;
  }
  return intakeOf(loadStep(oc, bytes), request);
};

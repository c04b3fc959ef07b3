import { MM_IN } from '../../sheet/index.js';
import type { Intake } from '../refusal.js';
import { type IntakeRequest, intakeOf } from './intakeOf.js';
import type { Kernel } from './kernel.js';
import { loadAsWritten, loadStep } from './load.js';
import { fileUnit } from './unit.js';

/** The bodies of a STEP file as parts: as the file writes them, and only where one of them is not sound or no part, as the kernel mends them. */
export const readSolids = (oc: Kernel, bytes: Uint8Array, request: IntakeRequest): Intake => {
  const scale = request.unit === undefined ? 1 : MM_IN[request.unit] / fileUnit(request.text).mm;
  const bodies = loadAsWritten(oc, bytes, scale);
  if (bodies !== undefined && bodies.length > 0) {
    const intake = intakeOf({ bodies }, request);
    if (intake.refused.length === 0) return intake;
  }
  return intakeOf(loadStep(oc, bytes, scale), request);
};

import { allowanceByRule, deductionFrom, deductionLimit } from '../../forming/index.js';
import type { Trial } from '../../trial/index.js';
import type { BentStrip } from './pieceEntry.js';

/** Share of the sheet's thickness by which a strip of the same sheet may measure otherwise: over twice the widest tolerance of thin sheet. Common practice, no source. */
const THICKNESS = 0.15;
/** Where the strip calculation lays the neutral line (docs/forming.md). */
const K = 0.43;

/** Why a strip tells nothing of the trial's deduction, in a sentence with what was measured and what was to be expected; null where it may be believed. */
export const stripFault = ({ sheet, steps }: Pick<Trial, 'sheet' | 'steps'>, { station, bendAngle, cut, legs, thickness }: BentStrip): string | null => {
  const sheetIs = sheet.part.thickness;
  if (Math.abs(thickness - sheetIs) > THICKNESS * sheetIs) {
    return `The strip is ${thickness.toFixed(2)} mm thick and the sheet of this plan ${sheetIs.toFixed(2)} mm: only a strip of the same sheet, within ${(100 * THICKNESS).toFixed(0)} %, tells its deduction.`;
  }
  const [like] = steps.filter((step) => step.station === station && step.kind === 'V bend').sort((a, b) => Math.abs(a.bendAngle - bendAngle) - Math.abs(b.bendAngle - bendAngle));
  if (like === undefined) return null;
  const measured = legs[0] + legs[1] - cut;
  const calculated = deductionFrom(allowanceByRule({ name: 'K-factor', k: K }, like.insideRadius, thickness, bendAngle), like.insideRadius, thickness, bendAngle);
  const limit = deductionLimit(sheetIs);
  if (Math.abs(measured - calculated) <= limit) return null;
  return `Legs of ${legs[0].toFixed(2)} and ${legs[1].toFixed(2)} mm out of ${cut.toFixed(2)} mm make a deduction of ${measured.toFixed(2)} mm, where about ${calculated.toFixed(2)} mm is calculated at this bend angle; ` +
    `more than ${limit.toFixed(2)} mm between them is a slip in measuring or typing.`;
};

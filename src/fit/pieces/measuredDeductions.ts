import { type MeasuredDeduction, deductionFromStrip } from '../../forming/index.js';
import type { Trial } from '../../trial/index.js';
import { type BentStrip, type PieceRecord, standing } from './pieceEntry.js';
import { stripFault } from './stripFault.js';
import { stripsOf } from './withStripRows.js';

/** Strips whose measured bend angles lie this near are of one angle, degrees: the table itself looks no closer. */
const ONE_ANGLE = 0.5;

/** Rows of the table of measured deductions that the strips of this trial give: one for each station and bend angle, ready for the next plan. A strip that cannot be believed is in none. */
export const measuredDeductions = (trial: Trial, records: readonly PieceRecord[]): readonly MeasuredDeduction[] => {
  const groups: { readonly station: string; readonly bendAngle: number; readonly strips: BentStrip[] }[] = [];
  for (const { entry } of standing(records)) {
    if (entry.kind !== 'strip' || stripFault(trial, entry) !== null) continue;
    const group = groups.find((g) => g.station === entry.station && Math.abs(g.bendAngle - entry.bendAngle) <= ONE_ANGLE);
    if (group) group.strips.push(entry);
    else groups.push({ station: entry.station, bendAngle: entry.bendAngle, strips: [entry] });
  }
  return groups.flatMap(({ station, strips }): MeasuredDeduction[] => {
    const stands = trial.stations.find(({ id }) => id === station);
    const punch = trial.punches.find(({ id }) => id === stands?.punch);
    const die = trial.dies.find(({ id }) => id === stands?.die);
    if (!punch || !die) return [];
    const mean = strips.reduce((sum, s) => sum + s.bendAngle, 0) / strips.length;
    const row = deductionFromStrip({
      metal: trial.metal.id, thickness: trial.sheet.part.thickness, v: die.v, vConvention: die.vConvention, tipRadius: punch.tipRadius, bendAngle: mean,
    }, strips);
    const thick = strips.reduce((sum, s) => sum + s.thickness, 0) / strips.length;
    const batches = [...new Set(strips.map(({ batch }) => batch))].join(', ');
    return row ? [{ ...row, note: `${stripsOf(records[0]!.trialId)}, batch ${batches}, ${thick.toFixed(2)} mm thick as measured` }] : [];
  });
};

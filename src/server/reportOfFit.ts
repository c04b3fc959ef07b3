import { type FitBoard, type FitColumn, notTried, pieceDifferences, racksNamed, standing, walkChoice } from '../fit/index.js';
import { type ReportData, type ReportTyped, reportPart } from '../papers/index.js';
import type { Store } from '../store/index.js';
import type { Trial } from '../trial/index.js';
import type { FitView, KeptCell } from './fitTask.js';
import { found, HttpError } from './httpError.js';

const NOT_YET = notTried('Not computed yet.');

/** The id of the trial of the first cell that makes the part. */
const madeBy = (row: readonly (KeptCell | null)[]): string | null => row.find((cell) => cell?.verdict === 'makes' && cell.trialId !== null)?.trialId ?? null;

/** Every piece that was made of the fit's parts, whichever trial it was made by. */
const demonstratedOf = async (store: Store, parts: FitView['parts']): Promise<ReportData['demonstrated']> => {
  const all = [];
  for (const { id } of parts) {
    for (const { id: trialId, partName, machineName } of await store.trials({ partId: id })) {
      const records = await store.pieces(trialId);
      const made = standing(records).filter(({ entry }) => entry.kind === 'piece');
      if (made.length > 0) all.push({ part: partName, machine: machineName, records: made, differences: pieceDifferences(records) });
    }
  }
  return all;
};

export interface ReportOfFit {
  readonly data: ReportData;
  readonly walkTrialId: string | null;
}

/** What the buyer's report says of a fit; `walkId`: the trial to be shown stroke by stroke, one of the fit's own. */
export const reportOfFit = async (
  store: Store, view: FitView, columns: readonly FitColumn[], walkId: string | undefined, typed: ReportTyped,
): Promise<ReportOfFit> => {
  const trialOf = async (id: string | null): Promise<Trial | undefined> => (id === null ? undefined : (await store.trial(id))?.trial);
  const inFit = view.cells.flat().some((cell) => cell?.trialId === walkId && cell?.verdict === 'makes');
  if (walkId !== undefined && !inFit) throw new HttpError(422, `'${walkId}' is no trial of this fit that makes its part.`);
  const choice = walkChoice(view);
  const walkTrialId = walkId ?? (choice === null ? null : view.cells[choice[0]]![choice[1]]!.trialId);
  const walk = (await trialOf(walkTrialId)) ?? null;
  const parts = [];
  for (const [p, { id, revision }] of view.parts.entries()) {
    const { part } = found(await store.part(id, revision), 'A part of this fit was purged.');
    // a part has one blank in the report: that of the plan that is shown, where one is
    const shown = view.cells[p]!.some((cell) => cell !== null && cell.trialId === walkTrialId && cell.trialId !== null);
    parts.push(reportPart(part, (shown ? walk : undefined) ?? (await trialOf(madeBy(view.cells[p]!)))));
  }
  const board: FitBoard = {
    parts: view.parts, machines: view.machines, cheapest: view.cheapest, ...(view.drawingsFree && { drawingsFree: view.drawingsFree }), alone: view.alone, options: view.options,
    cells: view.cells.map((row) => row.map((cell) => cell ?? NOT_YET)),
  };
  return {
    walkTrialId,
    data: {
      board, parts, machines: columns.map(({ machine }) => machine), racks: racksNamed(columns),
      metal: { id: view.metalId, name: view.metalName }, quantity: view.quantity, walk,
      demonstrated: await demonstratedOf(store, view.parts), typed,
    },
  };
};

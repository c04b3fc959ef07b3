import type { Trial } from '../trial/index.js';
import { bytesOf, openDocument } from './document.js';
import { type Units, roundText } from './format.js';
import type { Area } from './paper.js';
import { flow } from './flow.js';
import { formingBlocks } from './formingBlocks.js';
import { drawReasonPages } from './reasonPages.js';
import { drawFirstPage, wordColumns } from './setupFirstPage.js';
import { drawStepPage } from './setupStepPage.js';
import { STRIP, type TitleData, drawFrame, drawTitleBlock, drawTitleStrip } from './titleBlock.js';

export interface SetupSheetOptions {
  /** As printed; left open to be filled in by hand when absent. */
  readonly date?: string;
  readonly who?: string;
  readonly partName?: string;
  readonly revision?: string;
  readonly units?: Units;
}

/**
 * The set-up sheet of a trial as a PDF (A4 lying, fonts embedded): a first sheet with path, layout, blank, tools and
 * notes, then a sheet for each step. A verdict other than 'makes' gives a sheet of reasons and remedies instead.
 *
 * @example await writeFile('u-channel.pdf', await setupSheetPdf(trial, { date: '2026-03-02', who: 'demonstrator' }))
 */
export const setupSheetPdf = async (trial: Trial, options: SetupSheetOptions = {}): Promise<Uint8Array> => {
  const { date = '', who = '', partName = trial.sheet.part.name, revision = '', units = 'mm' } = options;
  const data: TitleData = {
    part: partName, revision, date, who,
    metal: trial.metal.name,
    quantity: String(trial.quantity),
    machine: trial.machine.name,
    thickness: roundText(trial.sheet.part.thickness, units),
    verdict: trial.verdict,
  };
  const doc = openDocument(`Set-up sheet: ${partName}`, who);
  const names: string[] = [];
  const sheet = (name: string): void => {
    doc.addPage();
    names.push(name);
  };
  const notes = (): readonly Area[] => {
    sheet('notes and figures');
    drawFrame(doc);
    return wordColumns(STRIP.height);
  };
  sheet('first');
  if (trial.verdict === 'makes') {
    const left = drawFirstPage(doc, trial, units, notes);
    for (const step of trial.steps) {
      sheet(`step ${step.number} of ${trial.steps.length}`);
      drawStepPage(doc, trial, step, units);
    }
    const figures = [...left, ...formingBlocks(trial, wordColumns(STRIP.height)[0]!.width, units)];
    if (figures.length > 0) flow(doc, figures, notes(), notes);
  } else {
    drawReasonPages(doc, trial, units, notes);
  }
  names.forEach((name, k) => {
    doc.switchToPage(k);
    const count = `sheet ${k + 1} of ${names.length}`;
    if (k === 0) drawTitleBlock(doc, data, count);
    else drawTitleStrip(doc, data, name, count);
  });
  return bytesOf(doc);
};

import { type DayPlan, oneLayout } from '../fit/index.js';
import type { AllowanceRule } from '../forming/index.js';
import { foldedStep } from '../intake/index.js';
import {
  blankDxf, blankSvg, buyersReportPdf, type CheckSheetOptions, checkSheetPdf, dayPlanPdf, type DayPlanOptions, layoutPicture, partPicture, pictureToSvg, type ReportData,
  reasonPicture, sectionPicture, setupSheetPdf, type SetupSheetOptions, stepPicture,
  unfoldingPath,
} from '../papers/index.js';
import { type Blank, blank, develop, type Part, ruleInWords } from '../sheet/index.js';
import type { ConditionFigures, ConditionRecord, Machine } from '../shop/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { type MeasuredBends, metalDataFromBends } from './askedMetal.js';
import { bendAnswer, type BendQuestion } from './bendAnswer.js';
import { found, HttpError } from './httpError.js';
import { type PartSummary, partSummary } from './partSummary.js';
import { threadClock } from './threadClock.js';

/** One drawing, paper or reckoning that may take a while: plain data, so that it can be sent to a worker. */
export type PaperTask =
  | { readonly kind: 'summary' | 'blank.dxf' | 'blank.svg' | 'part'; readonly part: Part; readonly rule: AllowanceRule }
  | { readonly kind: 'part.step'; readonly part: Part; readonly shares: readonly number[] }
  | { readonly kind: 'setup sheet'; readonly trial: Trial; readonly options: SetupSheetOptions }
  | { readonly kind: 'report'; readonly data: ReportData }
  | { readonly kind: 'day plan'; readonly plan: DayPlan; readonly trials: readonly Trial[]; readonly options: DayPlanOptions }
  | { readonly kind: 'one layout'; readonly inputs: readonly TrialInput[]; readonly bed?: number }
  | { readonly kind: 'shared layout'; readonly trials: readonly Trial[] }
  | { readonly kind: 'layout' | 'path'; readonly trial: Trial }
  | { readonly kind: 'before' | 'after' | 'section'; readonly trial: Trial; readonly step: number }
  | { readonly kind: 'reason'; readonly trial: Trial; readonly number: number }
  | { readonly kind: 'bend'; readonly question: BendQuestion }
  | { readonly kind: 'metal of bends'; readonly name: string; readonly like: string; readonly bends: MeasuredBends }
  | { readonly kind: 'check sheet'; readonly machine: Machine; readonly filled: { readonly record: ConditionRecord; readonly figures: ConditionFigures } | null; readonly options: CheckSheetOptions };

export type Paper = string | Uint8Array | PartSummary;

/** Makes it; throws an HttpError when there is no such thing to draw. */
export const makePaper = async (task: PaperTask): Promise<Paper> => {
  switch (task.kind) {
    case 'summary':
      return partSummary(task.part, task.rule);
    case 'blank.dxf':
      return blankDxf(nominal(task.part, task.rule), { rule: ruleInWords(task.rule) });
    case 'blank.svg':
      return blankSvg(nominal(task.part, task.rule), { rule: ruleInWords(task.rule) });
    case 'part.step': {
      const written = await foldedStep(task.part, task.shares);
      if ('sentence' in written) throw new HttpError(422, written.sentence);
      return written.text;
    }
    case 'part':
      return pictureToSvg(partPicture(develop(task.part, task.rule)));
    case 'setup sheet':
      return setupSheetPdf(task.trial, task.options);
    case 'check sheet':
      return checkSheetPdf(task.machine, task.filled, task.options);
    case 'report':
      return buyersReportPdf(task.data);
    case 'day plan':
      return dayPlanPdf(task.plan, task.trials, task.options);
    case 'one layout':
      // data, as text: it is kept and handed on like any other paper
      return JSON.stringify(await oneLayout(task, { now: threadClock() }));
    case 'bend':
      return JSON.stringify(bendAnswer(task.question));
    case 'metal of bends':
      return JSON.stringify(metalDataFromBends(task.name, task.like, task.bends));
    case 'shared layout':
      return pictureToSvg(layoutPicture(task.trials[0]!, { others: task.trials.slice(1) }));
    case 'layout':
      return pictureToSvg(layoutPicture(task.trial));
    case 'path':
      return pictureToSvg(unfoldingPath(task.trial));
    case 'before':
    case 'after':
      return pictureToSvg(stepPicture(task.trial, task.step, task.kind));
    case 'section':
      return pictureToSvg(sectionPicture(task.trial, task.step));
    case 'reason': {
      const reason = found(task.trial.reasons[task.number - 1], `The trial has no reason ${task.number}.`);
      return pictureToSvg(found(reasonPicture(task.trial, reason) ?? undefined, 'This reason names no partial fold to draw.'));
    }
  }
};

const nominal = (part: Part, rule: AllowanceRule): Blank => {
  const flat = blank(develop(part, rule));
  if (!flat.ok) throw new HttpError(422, flat.failure.sentence);
  return flat.value;
};

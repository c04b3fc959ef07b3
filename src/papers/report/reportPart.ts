import { type Part, develop, ruleInWords } from '../../sheet/index.js';
import type { Trial } from '../../trial/index.js';
import type { ReportPart } from './reportData.js';

/** The nominal flat lengths of a part that no tools have formed yet. */
const NOMINAL = { name: 'K-factor', k: 0.44 } as const;

/** The part as a report draws it: as a plan's tools form it where there is one. */
export const reportPart = (part: Part, trial: Trial | undefined): ReportPart => {
  const demo = part.assumptions.some(({ sentence }) => /demo part/i.test(sentence));
  const rule = part.rule ?? NOMINAL;
  return trial ? { sheet: trial.sheet, flatBy: `as the tools of ${trial.machine.name} form it`, demo }
    : { sheet: develop(part, rule), flatBy: `nominal, by rule ${ruleInWords(rule)}`, demo };
};

import { type PieceRecord, fitBoard, fitCell, pieceDifferences, standing } from '../../fit/index.js';
import { type Part, develop, ruleInWords } from '../../sheet/index.js';
import type { Rack } from '../../shop/index.js';
import type { Trial } from '../../trial/index.js';
import type { Demonstrated, ReportData, ReportPart, ReportTyped } from './reportData.js';

/** The nominal flat lengths of a part that no tools have formed yet. */
const NOMINAL = { name: 'K-factor', k: 0.44 } as const;

const isDemo = (part: Part): boolean => part.assumptions.some(({ sentence }) => /demo part/i.test(sentence));

/** The part as a report draws it: as a plan's tools form it where there is one. */
export const reportPart = (part: Part, trial: Trial | undefined): ReportPart => {
  const rule = part.rule ?? NOMINAL;
  return trial ? { sheet: trial.sheet, flatBy: `as the tools of ${trial.machine.name} form it`, demo: isDemo(part) }
    : { sheet: develop(part, rule), flatBy: `nominal, by rule ${ruleInWords(rule)}`, demo: isDemo(part) };
};

/** A trial that was kept, and the pieces made by it. */
export interface KeptTrial {
  readonly partId: string;
  readonly trial: Trial;
  readonly records: readonly PieceRecord[];
}

export interface TrialsAsked {
  readonly parts: readonly { readonly id: string; readonly part: Part }[];
  /** One at most for each part and machine, all of one metal and quantity. */
  readonly trials: readonly KeptTrial[];
  readonly rack: Rack;
  /** Which of them is shown stroke by stroke. */
  readonly walk: Trial | null;
  readonly typed: ReportTyped;
}

const demonstratedOf = ({ trial, records }: KeptTrial): Demonstrated[] => {
  const made = standing(records).filter(({ entry }) => entry.kind === 'piece');
  return made.length === 0 ? [] : [{ part: trial.sheet.part.name, machine: trial.machine.name, records: made, differences: pieceDifferences(records) }];
};

/** What the report is made from, where trials were kept; null without a trial. What nobody tried is "not decided" and says so. */
export const reportFromTrials = ({ parts, trials, rack, walk, typed }: TrialsAsked): ReportData | null => {
  const [first] = trials;
  if (!first) return null;
  const machines = [...new Map(trials.map(({ trial }) => [trial.machine.id, trial.machine])).values()];
  const at = (partId: string, machineId: string): Trial | undefined => trials.find((t) => t.partId === partId && t.trial.machine.id === machineId)?.trial;
  const untried = (): ReturnType<typeof fitCell> => fitCell({
    ...first.trial, verdict: 'not decided', steps: [], seconds: 0, timeModel: [], remedies: [], warnings: [], proof: { ...first.trial.proof, checked: false, passed: false },
    reasons: [{ code: 'limit', sentence: 'Not tried on this machine.', bends: [] }],
  });
  const cells = parts.map(({ id }) => machines.map((machine) => {
    const trial = at(id, machine.id);
    return trial ? fitCell(trial) : untried();
  }));
  return {
    board: fitBoard(parts.map(({ part }) => ({ name: part.name, thickness: part.thickness, bends: part.bends.length })), machines, cells),
    parts: parts.map(({ id, part }) => reportPart(part, trials.find((t) => t.partId === id && t.trial.verdict === 'makes')?.trial)),
    machines, rack: { name: rack.name, demo: rack.demo }, metal: first.trial.metal, quantity: first.trial.quantity, walk,
    demonstrated: trials.flatMap(demonstratedOf), typed,
  };
};

import type { PhaseName } from './phase.js';
import { ALLOWANCE, HORIZON, MEASURING } from './tolerances.js';

/** What one step's replay has found. */
export interface StepLog {
  readonly number: number;
  /** mm: the least of all distances measured; the horizon while nothing came nearer. */
  smallest: number;
  where: string;
  phase: PhaseName | '';
  largestMotion: number;
  readonly findings: string[];
}

export const newLog = (number: number): StepLog => ({
  number,
  smallest: HORIZON,
  where: `step ${number}: nothing that shall not touch came within ${HORIZON} mm`,
  phase: '',
  largestMotion: 0,
  findings: [],
});

/** mm as the sentences print them: hundredths, or coarser where that is plenty. */
export const mm = (value: number): string => (Math.abs(value) < 10 ? value.toFixed(2) : value.toFixed(1));

export const sizes = (box: readonly [number, number, number]): string => `${mm(box[0])} x ${mm(box[1])} x ${mm(box[2])} mm`;

/** Takes note of a distance between two things that shall not touch. */
export const noteGap = (log: StepLog, phase: PhaseName, at: string, a: string, b: string, gap: number): void => {
  if (gap >= log.smallest) return;
  log.smallest = gap;
  log.phase = phase;
  log.where = `step ${log.number}, ${phase}${at}: ${a} and ${b}`;
};

/** Too little between two things that shall not touch. */
export const tooNear = (gap: number): boolean => gap < ALLOWANCE - MEASURING;

export const find = (log: StepLog, phase: PhaseName, at: string, sentence: string): void => {
  log.findings.push(`Step ${log.number}, ${phase}${at}: ${sentence}`);
};

/** The finding for a gap that is too small, with the shared space where there is one. */
export const gapSentence = (a: string, b: string, gap: number, shared: readonly [number, number, number] | null): string =>
  shared === null || gap > 0
    ? `${a} comes within ${mm(gap)} mm of ${b}; ${ALLOWANCE} mm is asked.`
    : `${a} runs into ${b}; they share a space of ${sizes(shared)}.`;

import { type FitAsked, type FitCell, type FitColumn, type OptionWorth, fitCell, notTried, optionColumns, optionWorths } from '../fit/index.js';
import type { MeasuredDeduction } from '../forming/index.js';
import type { Metal } from '../metal/index.js';
import type { Part } from '../sheet/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { contentKey } from './contentKey.js';
import { proofSeconds, workers as defaultWorkers } from './limits.js';
import { type RunningTrial, TrialPool } from './trialPool.js';

export interface FitQuestion {
  readonly parts: readonly Part[];
  readonly columns: readonly FitColumn[];
  readonly metal: Metal;
  readonly quantity: number;
  /** The shop's measured deductions: taken where they fit. */
  readonly deductions?: readonly MeasuredDeduction[];
  /** s of processor time that the search for each cell is given. */
  readonly seconds: number;
  readonly asked: FitAsked;
}

/** What the options of the columns' machines buy beside: each fitted is a column more, planned without remedies. */
export interface OptionsRun {
  readonly options: readonly OptionWorth[];
  readonly computed: number;
  readonly fromCache: number;
}

/** Where cells are kept by what they depend on. `trial`, `part` (its index), `column` and `defect` are for a cache that keeps trials too. */
export interface CellCache {
  get(key: string): Promise<FitCell | undefined>;
  put(key: string, cell: FitCell, from: { readonly trial: Trial; readonly part: number; readonly column: FitColumn; readonly defect?: string }): Promise<FitCell | void>;
}

export interface FitHooks {
  readonly workers?: number;
  /** The workers to run in; they stay when the fit has ended. Its own when absent. */
  readonly pool?: TrialPool;
  /** Cells not worth a plan: what they are told instead. */
  readonly skip?: (part: number, column: number) => string | null;
  readonly onCell?: (part: number, column: number, cell: FitCell) => void;
  readonly cache?: CellCache;
  readonly onProgress?: (progress: FitProgress) => void;
  /** Ends it: cells not yet computed come back as not tried. */
  readonly signal?: AbortSignal;
}

/** Cells done, of how many, and how many of them were known already. */
export interface FitProgress {
  readonly done: number;
  readonly of: number;
  readonly fromCache: number;
}

export interface FitRun {
  readonly cells: readonly (readonly FitCell[])[];
  readonly computed: number;
  readonly fromCache: number;
}

/** It was tried and gave no answer. */
const undecided = (sentence: string): FitCell => ({ ...notTried(sentence), verdict: 'not decided' });

/** s of passing time after which a cell's worker is taken for hanging: other work on the computer may stretch its limits of processor time so far. */
const lifeOf = (seconds: number): number => STRETCHED * seconds + proofSeconds;
const STRETCHED = 6;

/** Every part in every column, planned and proved in worker threads; this thread only hands out and gathers. */
export const runFit = async (question: FitQuestion, hooks: FitHooks = {}): Promise<FitRun> => {
  const { parts, columns, metal, quantity, seconds, asked, deductions = [] } = question;
  const pool = hooks.pool ?? new TrialPool();
  const cells: FitCell[][] = parts.map(() => []);
  const todo = parts.flatMap((_, p) => columns.map((__, c) => [p, c] as const));
  const running = new Set<RunningTrial>();
  const counts = { done: 0, fromCache: 0 };
  const stop = (): void => running.forEach((trial) => trial.stop());
  hooks.signal?.addEventListener('abort', stop);

  const cellOf = async (input: TrialInput, part: number, column: FitColumn): Promise<FitCell> => {
    const key = contentKey(input, asked);
    const before = await hooks.cache?.get(key);
    if (before !== undefined) {
      counts.fromCache++;
      return before;
    }
    if (hooks.signal?.aborted === true) return notTried('Stopped before its turn came.');
    const trial = pool.run(input, lifeOf(seconds), () => undefined, asked);
    running.add(trial);
    const end = await trial.end;
    running.delete(trial);
    if (end.state === 'failed') return undecided(end.why);
    if (end.trial === undefined || (end.state === 'stopped' && end.trial.verdict !== 'makes')) return notTried('Stopped while it was worked on.');
    const cell = fitCell(end.trial);
    // what was broken off is no answer to keep: another time it may well end. A limit of processor time that was reached is one, and stands in the key
    if (end.state !== 'done' || end.why !== undefined) return cell;
    return (await hooks.cache?.put(key, cell, { trial: end.trial, part, column, ...(end.defect !== undefined && { defect: end.defect }) })) ?? cell;
  };

  const lane = async (): Promise<void> => {
    for (let next = todo.shift(); next !== undefined; next = todo.shift()) {
      const [p, c] = next;
      const { machine, rack } = columns[c]!;
      const skipped = hooks.skip?.(p, c) ?? null;
      const cell = skipped !== null ? notTried(skipped) : await cellOf({ part: parts[p]!, machine, rack, metal, quantity, limits: { seconds }, ...(deductions.length === 0 ? {} : { deductions }) }, p, columns[c]!);
      cells[p]![c] = cell;
      counts.done++;
      hooks.onCell?.(p, c, cell);
      hooks.onProgress?.({ done: counts.done, of: parts.length * columns.length, fromCache: counts.fromCache });
    }
  };
  try {
    await Promise.all(Array.from({ length: hooks.workers ?? defaultWorkers }, lane));
  } finally {
    hooks.signal?.removeEventListener('abort', stop);
    if (hooks.pool === undefined) await pool.close();
  }
  return { cells, computed: counts.done - counts.fromCache, fromCache: counts.fromCache };
};

/** What each option buys for these parts, by planning every part with it too. Where a part was not decided without, nothing is planned. */
export const runOptions = async (question: FitQuestion, cells: FitRun['cells'], hooks: Omit<FitHooks, 'onCell' | 'skip'> = {}): Promise<OptionsRun> => {
  const { parts, columns, quantity, asked } = question;
  const extra = optionColumns(columns);
  const open = ({ verdict }: FitCell): boolean => verdict === 'not decided' || verdict === 'not tried';
  const run = await runFit({ ...question, columns: extra, asked: { ...asked, remedies: false } }, {
    ...hooks, skip: (p, k) => (open(cells[p]![extra[k]!.of]!) ? 'Not decided without this option, so not tried with it.' : null),
  });
  return { options: optionWorths(parts.map(({ name }) => name), columns, cells, run.cells, quantity), computed: run.computed, fromCache: run.fromCache };
};

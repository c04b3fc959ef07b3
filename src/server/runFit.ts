import { type FitAsked, type FitCell, type FitColumn, type OptionColumn, type OptionWorth, asCarried, carriedOver, fitCell, notTried, optionColumns, optionWorths } from '../fit/index.js';
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

/** Of which part (its index) in which column a cell is. */
export interface CellOf {
  readonly part: number;
  readonly column: FitColumn | OptionColumn;
}

/** Where cells are kept by what they depend on. What a cell is of, its trial and `defect` are for a cache that keeps trials too. */
export interface CellCache {
  get(key: string, of: CellOf): Promise<FitCell | undefined>;
  put(key: string, cell: FitCell, from: CellOf & { readonly trial: Trial; readonly defect?: string }): Promise<FitCell | void>;
}

export interface FitHooks {
  readonly workers?: number;
  /** The workers to run in; they stay when the fit has ended. Its own when absent. */
  readonly pool?: TrialPool;
  /** Cells of other columns whose ways are tried too where a cell is not decided. */
  readonly beside?: { readonly columns: readonly FitColumn[]; readonly cells: FitRun['cells'] };
  /** Cells that ask no plan: what they say. */
  readonly given?: (part: number, column: number) => FitCell | null;
  /** What a cell's worker is at, in words. */
  readonly onDoing?: (part: number, column: FitColumn, what: string) => void;
  /** Called once more for a cell that was not decided and is made by the way of another. */
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

/** Ways of other machines that are tried for a cell whose own search did not end, and s of search for each: little is left open. */
const MOST_CARRIED = 3;
const SECONDS_CARRIED = 6;

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

  const inputOf = (p: number, { machine, rack }: FitColumn): TrialInput =>
    ({ part: parts[p]!, machine, rack, metal, quantity, limits: { seconds }, ...(deductions.length === 0 ? {} : { deductions }) });

  /** `from`: the machine whose way it is, where one is carried over. */
  const cellOf = async (input: TrialInput, part: number, column: FitColumn, asked: FitAsked, from?: string): Promise<FitCell> => {
    const key = contentKey(input, asked, from);
    const before = await hooks.cache?.get(key, { part, column });
    if (before !== undefined) {
      if (from === undefined) counts.fromCache++;
      return before;
    }
    if (hooks.signal?.aborted === true) return notTried('Stopped before its turn came.');
    const run = pool.run(input, lifeOf(seconds), ({ what }) => hooks.onDoing?.(part, column, what), asked);
    running.add(run);
    const end = await run.end;
    running.delete(run);
    if (end.state === 'failed') return undecided(end.why);
    if (end.trial === undefined || (end.state === 'stopped' && end.trial.verdict !== 'makes')) return notTried('Stopped while it was worked on.');
    const trial = from !== undefined && end.trial.verdict === 'makes' ? asCarried(end.trial, from) : end.trial;
    const cell = fitCell(trial);
    // what was broken off is no answer to keep: another time it may well end. A limit of processor time that was reached is one, and stands in the key
    if (end.state !== 'done' || end.why !== undefined) return cell;
    return (await hooks.cache?.put(key, cell, { trial, part, column, ...(end.defect !== undefined && { defect: end.defect }) })) ?? cell;
  };

  const lane = async (): Promise<void> => {
    for (let next = todo.shift(); next !== undefined; next = todo.shift()) {
      const [p, c] = next;
      const given = hooks.given?.(p, c) ?? null;
      if (given !== null && given.verdict !== 'not tried') counts.fromCache++;
      const cell = given ?? await cellOf(inputOf(p, columns[c]!), p, columns[c]!, asked);
      cells[p]![c] = cell;
      counts.done++;
      hooks.onCell?.(p, c, cell);
      hooks.onProgress?.({ done: counts.done, of: parts.length * columns.length, fromCache: counts.fromCache });
    }
  };
  /** What one machine's search found is tried where another's did not end: planned there again with all else settled, and proved. */
  const carry = async (p: number, c: number, cell: FitCell): Promise<void> => {
    const known = [{ columns, cells }, ...(hooks.beside ? [hooks.beside] : [])].flatMap((board) => board.cells[p]!.map((made, k) => ({ made, from: board.columns[k]!.machine.name })));
    const ways = new Map(known.flatMap(({ made: { way }, from }) => (way ? [[JSON.stringify(way), { way, from }] as const] : [])));
    for (const { way, from } of [...ways.values()].slice(0, MOST_CARRIED)) {
      if (hooks.signal?.aborted === true) return;
      const whole = inputOf(p, columns[c]!);
      const input = carriedOver({ ...whole, limits: { seconds: Math.min(seconds, SECONDS_CARRIED) } }, way);
      const found = input && await cellOf(input, p, columns[c]!, { ...asked, remedies: false }, from);
      if (found?.verdict !== 'makes') continue;
      cells[p]![c] = { ...found, computeSeconds: found.computeSeconds + cell.computeSeconds };
      hooks.onCell?.(p, c, cells[p]![c]!);
      return;
    }
  };
  /** Where one lane breaks, the others take nothing more of what is left. */
  const inLanes = async (left: unknown[], work: () => Promise<void>): Promise<void> => {
    const lanes = Array.from({ length: hooks.workers ?? defaultWorkers }, work);
    try {
      await Promise.all(lanes);
    } catch (error) {
      left.length = 0;
      stop();
      await Promise.allSettled(lanes);
      throw error;
    }
  };
  try {
    await inLanes(todo, lane);
    const open = cells.flatMap((row, p) => row.flatMap((cell, c) => (cell.verdict === 'not decided' ? [[p, c, cell] as const] : [])));
    await inLanes(open, async () => {
      for (let next = open.shift(); next !== undefined; next = open.shift()) await carry(...next);
    });
  } finally {
    hooks.signal?.removeEventListener('abort', stop);
    if (hooks.pool === undefined) await pool.close();
  }
  return { cells, computed: counts.done - counts.fromCache, fromCache: counts.fromCache };
};

/** What each option buys for these parts, by planning every part with it too. Where a part was not decided without, nothing is planned. */
export const runOptions = async (question: FitQuestion, cells: FitRun['cells'], hooks: Omit<FitHooks, 'onCell' | 'given'> = {}): Promise<OptionsRun> => {
  const { parts, columns, quantity, asked } = question;
  const extra = optionColumns(columns);
  const open = ({ verdict }: FitCell): boolean => verdict === 'not decided' || verdict === 'not tried';
  const run = await runFit({ ...question, columns: extra, asked: { ...asked, remedies: false } }, {
    ...hooks, beside: { columns, cells }, given: (p, k) => (open(cells[p]![extra[k]!.of]!) ? notTried('Not decided without this option, so not tried with it.') : null),
  });
  return { options: optionWorths(parts.map(({ name }) => name), columns, cells, run.cells, quantity), computed: run.computed, fromCache: run.fromCache };
};

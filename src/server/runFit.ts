import { type FitAsked, type FitCell, fitCell } from '../fit/index.js';
import type { Metal } from '../metal/index.js';
import type { Part } from '../sheet/index.js';
import type { Machine, Rack } from '../shop/index.js';
import type { TrialInput } from '../trial/index.js';
import { contentKey } from './contentKey.js';
import { proofSeconds, workers as defaultWorkers } from './limits.js';
import { type RunningTrial, TrialPool } from './trialPool.js';

export interface FitQuestion {
  readonly parts: readonly Part[];
  readonly machines: readonly Machine[];
  readonly rack: Rack;
  readonly metal: Metal;
  readonly quantity: number;
  /** s of search for each cell. */
  readonly seconds: number;
  readonly asked: FitAsked;
}

/** Where cells are kept by what they depend on. */
export interface CellCache {
  get(key: string): Promise<FitCell | undefined>;
  put(key: string, cell: FitCell): Promise<void>;
}

export interface FitHooks {
  readonly workers?: number;
  readonly cache?: CellCache;
  readonly onProgress?: (progress: { readonly done: number; readonly of: number; readonly fromCache: number }) => void;
  /** Ends it: cells not yet computed come back as not decided. */
  readonly signal?: AbortSignal;
}

export interface FitRun {
  readonly cells: readonly (readonly FitCell[])[];
  readonly computed: number;
  readonly fromCache: number;
}

const undecided = (sentence: string): FitCell => ({
  verdict: 'not decided', margins: [], reasons: [{ code: 'limit', sentence, bends: [] }], remedies: [], seconds: null, computeSeconds: 0,
  proof: { checked: false, passed: false }, warnings: [],
});

/** Every part on every machine, planned and proved in worker threads; this thread only hands out and gathers. */
export const runFit = async (question: FitQuestion, hooks: FitHooks = {}): Promise<FitRun> => {
  const { parts, machines, rack, metal, quantity, seconds, asked } = question;
  const pool = new TrialPool();
  const cells: FitCell[][] = parts.map(() => []);
  const todo = parts.flatMap((_, p) => machines.map((__, m) => [p, m] as const));
  const running = new Set<RunningTrial>();
  const counts = { done: 0, fromCache: 0 };
  const stop = (): void => running.forEach((trial) => trial.stop());
  hooks.signal?.addEventListener('abort', stop);

  const cellOf = async (input: TrialInput): Promise<FitCell> => {
    const key = contentKey(input, asked);
    const before = await hooks.cache?.get(key);
    if (before !== undefined) {
      counts.fromCache++;
      return before;
    }
    if (hooks.signal?.aborted === true) return undecided('Stopped before it was tried.');
    const trial = pool.run(input, seconds + proofSeconds, () => undefined, asked);
    running.add(trial);
    const end = await trial.end;
    running.delete(trial);
    if (end.state === 'failed' || end.trial === undefined) return undecided(end.why ?? 'It ended without an answer.');
    const cell = fitCell(end.trial);
    if (end.state === 'done') await hooks.cache?.put(key, cell);
    return cell;
  };

  const lane = async (): Promise<void> => {
    for (let next = todo.shift(); next !== undefined; next = todo.shift()) {
      const [p, m] = next;
      cells[p]![m] = await cellOf({ part: parts[p]!, machine: machines[m]!, rack, metal, quantity, limits: { seconds } });
      counts.done++;
      hooks.onProgress?.({ done: counts.done, of: parts.length * machines.length, fromCache: counts.fromCache });
    }
  };
  try {
    await Promise.all(Array.from({ length: hooks.workers ?? defaultWorkers }, lane));
  } finally {
    hooks.signal?.removeEventListener('abort', stop);
    await pool.close();
  }
  return { cells, computed: counts.done - counts.fromCache, fromCache: counts.fromCache };
};

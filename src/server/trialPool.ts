import { Worker } from 'node:worker_threads';
import { type FitAsked, unproved } from '../fit/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { graceSeconds, workerMemory, workerTrials } from './limits.js';
import type { Defect, Progress, TrialTask, TrialWord } from './trialTask.js';
import { workerFile } from './workerFile.js';

export type TrialEnd =
  | { readonly state: 'done' | 'stopped'; readonly trial?: Trial; readonly defect?: string; readonly why?: string }
  | { readonly state: 'failed'; readonly why: string };

export interface RunningTrial {
  /** Resolves once, whatever happens to the worker. */
  readonly end: Promise<TrialEnd>;
  /** Asks the planner to end, and kills it if it does not within the time of grace. */
  stop(): void;
  /** Kills it now. */
  kill(): Promise<void>;
}

interface Warm {
  readonly worker: Worker;
  trials: number;
}

/**
 * Plans and proves trials in workers that can be killed at any moment. A worker that ended its trial is kept warm for the next one
 * (starting one and loading the engines costs more than a small part does), and replaced after so many of them.
 */
export class TrialPool {
  private readonly idle: Warm[] = [];
  private readonly busy = new Set<Warm>();

  /** `seconds` is the life of the job in all; `fit` asks for a fit's trial in place of a plain one. */
  run(input: TrialInput, seconds: number, onProgress: (progress: Progress) => void, fit?: FitAsked): RunningTrial {
    const warm = this.idle.pop() ?? startWorker();
    const { worker } = warm;
    this.busy.add(warm);
    worker.ref();
    warm.trials++;
    const stop = new SharedArrayBuffer(4);
    const task: TrialTask = { input, stop, ...(fit && { fit }) };
    let planned: Trial | undefined;
    let ended: { readonly trial: Trial; readonly defect?: Defect } | undefined;
    let failure: string | undefined;
    let stopping = false;
    let overdue = false;
    let grace: NodeJS.Timeout | undefined;

    const endOf = (): TrialEnd => {
      if (ended !== undefined) return { state: stopping ? 'stopped' : 'done', trial: ended.trial, ...(stopping ? { why: byUser } : {}), ...(ended.defect ? { defect: defectFile(ended.defect) } : {}) };
      if (planned === undefined) {
        if (stopping) return { state: 'stopped', why: 'Stopped by the user before there was a plan.' };
        return { state: 'failed', why: failure ?? (overdue ? `The planner was not done within ${seconds} s and was stopped.` : 'The planner ended without an answer: a defect of the program.') };
      }
      if (stopping) return { state: 'stopped', why: byUser, trial: unproved(planned, 'Stopped by the user before the independent check of the plan was done.') };
      if (fit?.remedies && planned.verdict === 'does not make') {
        const cut = `What would change it was not looked for to the end. ${overdue ? `The planner was not done within ${seconds} s and was stopped.` : failure ?? 'The planner broke off: a defect of the program, not of the part.'}`;
        return { state: 'done', why: cut, trial: { ...planned, inVain: cut, remediesCut: true } };
      }
      const why = overdue ? `The independent check was not done within ${seconds} s of the job's start.` : 'The independent check broke off: a defect of the program, not of the part.';
      return { state: 'done', why, trial: unproved(planned, why) };
    };

    const end = new Promise<TrialEnd>((resolve) => {
      const late = setTimeout(() => {
        overdue = true;
        void worker.terminate();
      }, seconds * 1000);
      const settle = (): void => {
        clearTimeout(late);
        clearTimeout(grace);
        worker.off('message', heard).off('error', broken).off('exit', gone);
        this.busy.delete(warm);
        resolve(endOf());
      };
      const heard = (word: TrialWord): void => {
        if (word.kind === 'progress') return onProgress(word.progress);
        if (word.kind === 'planned') {
          planned = word.trial;
          return;
        }
        if (word.kind === 'failed') failure = word.sentence;
        else ended = word;
        settle();
        this.takeBack(warm, word.kind === 'failed');
      };
      const broken = (error: NodeJS.ErrnoException): void => {
        failure = error.code === 'ERR_WORKER_OUT_OF_MEMORY'
          ? `The planner needed more than the ${workerMemory} MiB that it is given.`
          : 'The planner could not run: a defect of the program, not of the part.';
        if (error.code !== 'ERR_WORKER_OUT_OF_MEMORY') process.stderr.write(`A defect of the program: ${error.stack ?? error.message}\n`);
      };
      const gone = (): void => settle();
      worker.on('message', heard).on('error', broken).on('exit', gone);
    });
    worker.postMessage(task);

    return {
      end,
      stop: () => {
        stopping = true;
        Atomics.store(new Int32Array(stop), 0, 1);
        grace ??= setTimeout(() => void worker.terminate(), graceSeconds * 1000);
        grace.unref();
      },
      kill: async () => {
        stopping = true;
        await worker.terminate();
      },
    };
  }

  /** Ends every worker, busy ones too. */
  async close(): Promise<void> {
    await Promise.all([...this.idle.splice(0), ...this.busy].map(({ worker }) => worker.terminate()));
  }

  private takeBack(warm: Warm, suspect: boolean): void {
    if (suspect || warm.trials >= workerTrials) {
      void warm.worker.terminate();
      return;
    }
    warm.worker.unref();
    this.idle.push(warm);
  }
}

const startWorker = (): Warm => {
  const worker = new Worker(workerFile(import.meta.url, 'trialWorker'), { resourceLimits: { maxOldGenerationSizeMb: workerMemory } });
  // A dying worker may emit an error when nobody listens any longer; that must not end the process.
  worker.on('error', () => undefined);
  return { worker, trials: 0 };
};

const byUser = 'Stopped by the user.';

const defectFile = (defect: Defect): string => JSON.stringify({ format: 'brakewright defect 1', ...defect });

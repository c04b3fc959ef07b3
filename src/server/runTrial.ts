import { Worker } from 'node:worker_threads';
import { unproved } from '../fit/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { graceSeconds, workerMemory } from './limits.js';
import type { Progress, TrialTask, TrialWord } from './trialTask.js';
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

/** Plans and proves one trial in a worker of its own that can be killed at any moment. */
export const runTrial = (input: TrialInput, seconds: number, onProgress: (progress: Progress) => void): RunningTrial => {
  const stop = new SharedArrayBuffer(4);
  const task: TrialTask = { input, stop };
  const worker = new Worker(workerFile(import.meta.url, 'trialWorker'), {
    workerData: task, resourceLimits: { maxOldGenerationSizeMb: workerMemory },
  });
  let planned: Trial | undefined;
  let ended: { readonly trial: Trial; readonly rejected: boolean } | undefined;
  let failure: string | undefined;
  let stopping = false;
  let overdue = false;

  worker.on('message', (word: TrialWord) => {
    if (word.kind === 'progress') onProgress(word.progress);
    else if (word.kind === 'planned') planned = word.trial;
    else if (word.kind === 'ended') ended = word;
    else failure = word.sentence;
  });
  worker.on('error', (error: NodeJS.ErrnoException) => {
    failure = error.code === 'ERR_WORKER_OUT_OF_MEMORY'
      ? `The planner needed more than the ${workerMemory} MiB that it is given.`
      : 'The planner could not run: a defect of the program, not of the part.';
    if (error.code !== 'ERR_WORKER_OUT_OF_MEMORY') process.stderr.write(`A defect of the program: ${error.stack ?? error.message}\n`);
  });
  const late = setTimeout(() => {
    overdue = true;
    void worker.terminate();
  }, seconds * 1000);

  const end = new Promise<TrialEnd>((resolve) => {
    worker.on('exit', () => {
      clearTimeout(late);
      resolve(endOf());
    });
  });

  const endOf = (): TrialEnd => {
    if (ended !== undefined) return { state: stopping ? 'stopped' : 'done', trial: ended.trial, ...(stopping ? { why: byUser } : {}), ...(ended.rejected ? { defect: defectFile(input, planned!, ended.trial) } : {}) };
    if (planned === undefined) {
      if (stopping) return { state: 'stopped', why: 'Stopped by the user before there was a plan.' };
      return { state: 'failed', why: failure ?? (overdue ? `The planner was not done within ${seconds} s and was stopped.` : 'The planner ended without an answer: a defect of the program.') };
    }
    if (stopping) return { state: 'stopped', why: byUser, trial: unproved(planned, 'Stopped by the user before the independent check of the plan was done.') };
    const why = overdue ? `The independent check was not done within ${seconds} s of the job's start.` : 'The independent check broke off: a defect of the program, not of the part.';
    return { state: 'done', why, trial: unproved(planned, why) };
  };

  return {
    end,
    stop: () => {
      stopping = true;
      Atomics.store(new Int32Array(stop), 0, 1);
      setTimeout(() => void worker.terminate(), graceSeconds * 1000).unref();
    },
    kill: async () => {
      stopping = true;
      await worker.terminate();
    },
  };
};

const byUser = 'Stopped by the user.';

/** What reproduces a plan that the proof rejected: the question, the plan as the planner gave it, and the proof's findings. */
const defectFile = (input: TrialInput, planned: Trial, { proof }: Trial): string =>
  JSON.stringify({ format: 'brakewright defect 1', input, trial: { ...planned, proof } });

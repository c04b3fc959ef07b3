import { parentPort } from 'node:worker_threads';
import { fitTrial, type PlanAndProveHooks, planAtStops } from '../fit/index.js';
import type { Trial } from '../trial/index.js';
import { threadClock } from './threadClock.js';
import type { Defect, Progress, TrialTask, TrialWord } from './trialTask.js';

/** ms between two words of progress: more would only keep the server busy. */
const quiet = 150;

/** The search has this share of the bar, the proof the rest. */
const searchShare = 0.7;

const port = parentPort!;
/** Limits count what is computed here, not what else the computer does. */
const clock = threadClock();
const say = (word: TrialWord): void => port.postMessage(word);

const work = async ({ input, stop, fit }: TrialTask): Promise<void> => {
  const flag = new Int32Array(stop);
  let last = -Infinity;
  const report = (progress: Progress): void => {
    const now = performance.now();
    if (now - last < quiet) return;
    last = now;
    say({ kind: 'progress', progress });
  };
  let planned: Trial | undefined;
  let defect: Defect | undefined;
  const hooks: PlanAndProveHooks = {
    now: clock,
    cancelled: () => Atomics.load(flag, 0) === 1,
    onProgress: ({ done, share, bestSeconds, bound }) => report({
      what: done, share: share * searchShare,
      ...(bestSeconds === undefined ? {} : { bestSeconds }), ...(bound === undefined ? {} : { bound }),
    }),
    onPlanned: (plan) => {
      planned = plan;
      say({ kind: 'planned', trial: plan });
    },
    onRejected: (asked, plan, proof) => {
      defect ??= { input: asked, trial: { ...plan, proof } };
    },
    onProof: (share) => report({
      what: 'independent check', share: searchShare + share * (1 - searchShare),
      ...(planned === undefined ? {} : { bestSeconds: planned.seconds, bound: planned.bound }),
    }),
  };
  const trial = await (fit ? fitTrial(input, fit, hooks) : planAtStops(input, hooks));
  say({ kind: 'ended', trial, ...(defect && { defect }) });
};

/** One trial at a time; the worker stays for the next. */
port.on('message', (task: TrialTask) => {
  work(task).catch((error: unknown) => {
    process.stderr.write(`A defect of the program while planning: ${(error as Error).stack ?? String(error)}\n`);
    say({ kind: 'failed', sentence: 'The planner broke off: a defect of the program, not of the part.' });
  });
});

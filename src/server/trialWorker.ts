import { parentPort, workerData } from 'node:worker_threads';
import { needsProof, planAndProve } from '../fit/index.js';
import type { Trial } from '../trial/index.js';
import type { Progress, TrialTask, TrialWord } from './trialTask.js';

/** ms between two words of progress: more would only keep the server busy. */
const quiet = 150;

const port = parentPort!;
const { input, stop } = workerData as TrialTask;
const flag = new Int32Array(stop);
const stopped = (): boolean => Atomics.load(flag, 0) === 1;
const say = (word: TrialWord): void => port.postMessage(word);

let last = -Infinity;
const report = (progress: Progress): void => {
  const now = performance.now();
  if (now - last < quiet) return;
  last = now;
  say({ kind: 'progress', progress });
};

/** The search has this share of the bar, the proof the rest. */
const searchShare = 0.7;

try {
  let planned: Trial | undefined;
  const trial = await planAndProve(input, {
    now: () => performance.now(),
    cancelled: stopped,
    onProgress: ({ done, share, bestSeconds, bound }) => report({
      what: done, share: share * searchShare,
      ...(bestSeconds === undefined ? {} : { bestSeconds }), ...(bound === undefined ? {} : { bound }),
    }),
    onPlanned: (plan) => {
      planned = plan;
      say({ kind: 'planned', trial: plan });
    },
    onProof: (share) => report({
      what: 'independent check', share: searchShare + share * (1 - searchShare),
      ...(planned === undefined ? {} : { bestSeconds: planned.seconds, bound: planned.bound }),
    }),
  });
  const rejected = planned !== undefined && needsProof(planned) && !needsProof(trial) && trial.proof.checked;
  say({ kind: 'ended', trial, rejected });
} catch (error) {
  process.stderr.write(`A defect of the program while planning: ${(error as Error).stack ?? String(error)}\n`);
  say({ kind: 'failed', sentence: 'The planner broke off: a defect of the program, not of the part.' });
}

import { parentPort } from 'node:worker_threads';
import { HttpError } from './httpError.js';
import { makePaper, type Paper, type PaperTask } from './paperTask.js';

export type PaperReply =
  | { readonly ok: true; readonly paper: Paper }
  | { readonly ok: false; readonly status: number; readonly sentence: string };

/** One task at a time, answered in turn. */
parentPort!.on('message', (task: PaperTask) => {
  void makePaper(task).then(
    (paper): PaperReply => ({ ok: true, paper }),
    (error: unknown): PaperReply => {
      if (error instanceof HttpError) return { ok: false, status: error.status, sentence: error.message };
      process.stderr.write(`A defect of the program while making '${task.kind}': ${(error as Error).stack ?? String(error)}\n`);
      return { ok: false, status: 500, sentence: 'It broke off: a defect of the program, not of the part.' };
    },
  ).then((reply) => parentPort!.postMessage(reply));
});

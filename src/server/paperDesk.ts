import { Worker } from 'node:worker_threads';
import { HttpError } from './httpError.js';
import { keptPapers, paperSeconds, waitingPapers, workerMemory } from './limits.js';
import { oneAtATime } from './oneAtATime.js';
import type { Paper, PaperTask } from './paperTask.js';
import type { PaperReply } from './paperWorker.js';
import { workerFile } from './workerFile.js';

/**
 * Makes drawings and papers in one warm worker, one after the other, and keeps the last ones: what they are made from never
 * changes. A task that takes too long costs the worker its life, not the server.
 */
export class PaperDesk {
  private worker: Worker | undefined;
  private readonly kept = new Map<string, Promise<Paper>>();
  private readonly inTurn = oneAtATime(waitingPapers, 'Too much is being worked on at this moment; try again.');

  /** What it makes, as its refusals call it, and what they say may be done about one that takes too long. */
  constructor(private readonly what = 'drawing', private readonly advice = '') {}

  /** `key` names what is drawn, revision included; the same key while one is being made waits for that one. */
  make(key: string, task: PaperTask): Promise<Paper> {
    const before = this.kept.get(key);
    if (before !== undefined) return before;
    const paper = this.inTurn(() => this.ask(task));
    this.kept.set(key, paper);
    const drop = (): void => void this.kept.delete(key);
    // a STEP file is asked for once and may have megabytes
    paper.then(task.kind === 'part.step' ? drop : () => undefined, drop);
    for (const oldest of this.kept.keys()) {
      if (this.kept.size <= keptPapers) break;
      this.kept.delete(oldest);
    }
    return paper;
  }

  /** After a purge nothing of a part may be left, here either. */
  forget(): void {
    this.kept.clear();
  }

  async close(): Promise<void> {
    this.forget();
    await this.worker?.terminate();
  }

  private ask(task: PaperTask): Promise<Paper> {
    const worker = (this.worker ??= startWorker());
    return new Promise((resolve, reject) => {
      // Each listener is taken off by itself: removeAllListeners() would also take the worker's own and make it deaf.
      const settle = (act: () => void): void => {
        clearTimeout(late);
        worker.off('message', answered).off('error', broken).off('exit', ended);
        worker.unref();
        act();
      };
      const lose = (status: number, sentence: string): void => settle(() => {
        this.worker = undefined;
        void worker.terminate();
        reject(new HttpError(status, sentence));
      });
      const answered = (reply: PaperReply): void => {
        // the geometry kernel's memory is given back with its worker alone
        if (task.kind === 'part.step') {
          this.worker = undefined;
          void worker.terminate();
        }
        settle(() => (reply.ok ? resolve(reply.paper) : reject(new HttpError(reply.status, reply.sentence))));
      };
      const broken = (error: Error): void => {
        process.stderr.write(`A defect of the program while making '${task.kind}': ${error.stack ?? error.message}\n`);
        lose(500, `The ${this.what} broke off: a defect of the program, not of the part.`);
      };
      const ended = (): void => lose(503, `The ${this.what} was stopped.`);
      const late = setTimeout(() => lose(503, `The ${this.what} was not done within ${paperSeconds} s${this.advice}.`), paperSeconds * 1000);
      worker.on('message', answered).on('error', broken).on('exit', ended);
      worker.ref();
      worker.postMessage(task);
    });
  }
}

const startWorker = (): Worker => {
  const worker = new Worker(workerFile(import.meta.url, 'paperWorker'), { resourceLimits: { maxOldGenerationSizeMb: workerMemory } });
  // A dying worker may emit an error when nobody listens any longer; that must not end the process.
  worker.on('error', () => undefined);
  return worker;
};

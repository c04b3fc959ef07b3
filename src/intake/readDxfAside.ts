import { Worker } from 'node:worker_threads';
import type { DxfReading } from '../sheet/index.js';
import type { DrawingRequest } from './dxf/drawingWorker.js';
import type { CutBlank } from './readBlankDxf.js';
import { patience } from './patience.js';
import type { DxfPartResult } from './readDxfPart.js';

/** s of computing, and by the clock; a drawing of one blank takes a tenth of one. */
const SECONDS = 9;
const MOST_SECONDS = 60;
/** MB of JavaScript heap: with what the process has besides it stays under 1 GiB. */
const HEAP_MB = 640;

/** The compiled worker, also when this module itself runs as TypeScript source in a test. */
const workerUrl = (): URL => {
  const own = import.meta.url;
  return new URL('./dxf/drawingWorker.js', own.endsWith('.ts') ? own.replace('/src/', '/dist/') : own);
};

interface AsideOptions {
  readonly seconds?: number;
  readonly signal?: AbortSignal;
}
type Code = 'cancelled' | 'time limit' | 'memory limit';

/** Reads in a worker of its own, which is ended after nine seconds of computing or 640 MB: a drawing made to hang a program ends in a sentence. */
const aside = <T>(request: DrawingRequest, failed: (code: Code, sentence: string, measure?: number) => T, { seconds: most = MOST_SECONDS, signal }: AsideOptions): Promise<T> => {
  const { name } = request;
  const seconds = Math.min(SECONDS, most);
  if (signal?.aborted === true) return Promise.resolve(failed('cancelled', `${name} was not read: the reading was cancelled.`));
  return new Promise((resolve, reject) => {
    const worker = new Worker(workerUrl(), { workerData: request, execArgv: [], resourceLimits: { maxOldGenerationSizeMb: HEAP_MB }, stdout: true, stderr: true });
    const finish = (result: T): void => {
      limit.stop();
      signal?.removeEventListener('abort', onAbort);
      void worker.terminate().then(() => resolve(result));
    };
    const onAbort = (): void => finish(failed('cancelled', `${name} was not read: the reading was cancelled.`));
    const limit = patience(seconds, most, () => finish(failed('time limit', `${name} was not read within ${seconds} s.`, seconds)));
    signal?.addEventListener('abort', onAbort, { once: true });
    worker.once('message', finish);
    worker.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'ERR_WORKER_OUT_OF_MEMORY' || error instanceof RangeError) return finish(failed('memory limit', `${name} needs more memory than the reader may use (${HEAP_MB} MB).`, HEAP_MB));
      limit.stop();
      return reject(new Error(`the drawing reader's worker failed: ${error.message}`));
    });
  });
};

/**
 * `readDxfPart` in a worker of its own.
 *
 * @example await readDxfAside(bytes, 'flat', { from: 'dxf', thickness: 1.5 })
 */
export const readDxfAside = (bytes: Uint8Array, name: string, told: DxfReading, options: AsideOptions = {}): Promise<DxfPartResult> =>
  aside<DxfPartResult>({ bytes, name, told }, (code, sentence, measure) => ({
    ok: false, seen: { layers: [], curves: [] }, failure: { code, sentence, bends: [], ...(measure === undefined ? {} : { measure }) },
  }), options);

/** The outline of a drawing or one sentence why there is none: `readBlankDxf` in a worker of its own. */
export type OutlineRead = { readonly ok: true; readonly value: CutBlank } | { readonly ok: false; readonly failure: { readonly sentence: string } };

export const readOutlineAside = (bytes: Uint8Array, name: string, options: AsideOptions = {}): Promise<OutlineRead> =>
  aside<OutlineRead>({ bytes, name }, (_, sentence) => ({ ok: false, failure: { sentence } }), options);

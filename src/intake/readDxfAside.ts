import { Worker } from 'node:worker_threads';
import type { DxfReading } from '../sheet/index.js';
import type { DrawingRequest } from './dxf/drawingWorker.js';
import type { DxfPartFailure, DxfPartResult } from './readDxfPart.js';

/** s; a drawing of one blank takes a tenth of one. */
const SECONDS = 10;
/** MB of JavaScript heap: with what the process has besides it stays under 1 GiB. */
const HEAP_MB = 640;

/** The compiled worker, also when this module itself runs as TypeScript source in a test. */
const workerUrl = (): URL => {
  const own = import.meta.url;
  return new URL('./dxf/drawingWorker.js', own.endsWith('.ts') ? own.replace('/src/', '/dist/') : own);
};

const failed = (code: DxfPartFailure['code'], sentence: string, measure?: number): DxfPartResult => ({
  ok: false, seen: { layers: [], curves: [] }, failure: { code, sentence, bends: [], ...(measure === undefined ? {} : { measure }) },
});

/**
 * `readDxfPart` in a worker of its own, which is ended after ten seconds or 640 MB: a drawing made to hang a program ends in a sentence.
 *
 * @example await readDxfAside(bytes, 'flat', { from: 'dxf', thickness: 1.5 })
 */
export const readDxfAside = (bytes: Uint8Array, name: string, told: DxfReading, options: { readonly seconds?: number; readonly signal?: AbortSignal } = {}): Promise<DxfPartResult> => {
  const { seconds = SECONDS, signal } = options;
  if (signal?.aborted === true) return Promise.resolve(failed('cancelled', `${name} was not read: the reading was cancelled.`));
  return new Promise((resolve, reject) => {
    const request: DrawingRequest = { bytes, name, told };
    const worker = new Worker(workerUrl(), { workerData: request, execArgv: [], resourceLimits: { maxOldGenerationSizeMb: HEAP_MB }, stdout: true, stderr: true });
    const finish = (result: DxfPartResult): void => {
      clearTimeout(limit);
      signal?.removeEventListener('abort', onAbort);
      void worker.terminate().then(() => resolve(result));
    };
    const onAbort = (): void => finish(failed('cancelled', `${name} was not read: the reading was cancelled.`));
    const limit = setTimeout(() => finish(failed('time limit', `${name} was not read within ${seconds} s.`, seconds)), seconds * 1000);
    signal?.addEventListener('abort', onAbort, { once: true });
    worker.once('message', finish);
    worker.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'ERR_WORKER_OUT_OF_MEMORY' || error instanceof RangeError) return finish(failed('memory limit', `${name} needs more memory than the reader may use (${HEAP_MB} MB).`, HEAP_MB));
      clearTimeout(limit);
      return reject(new Error(`the drawing reader's worker failed: ${error.message}`));
    });
  });
};

import { parentPort, workerData } from 'node:worker_threads';
import type { Intake } from '../refusal.js';
import { intakeOf, refusedFile } from './intakeOf.js';
import { type Kernel, ONE_FILE, loadKernel } from './kernel.js';
import { loadStep } from './load.js';

export interface ReadRequest {
  readonly id: number;
  readonly bytes: Uint8Array;
  readonly fileName: string;
  readonly sharpRadius?: number;
}

export interface ReadReply {
  readonly id: number;
  readonly intake: Intake;
  /** The kernel may be in disorder: use another worker for the next file. */
  readonly spoilt: boolean;
}

let kernel: Promise<Kernel> | undefined;

const read = async ({ id, bytes, fileName, sharpRadius }: ReadRequest): Promise<ReadReply> => {
  const oc = await (kernel ??= loadKernel(workerData === ONE_FILE));
  try {
    const text = new TextDecoder('latin1').decode(bytes);
    const request = { fileName, text, ...(sharpRadius === undefined ? {} : { sharpRadius }) };
    return { id, intake: intakeOf(loadStep(oc, bytes), request), spoilt: false };
  } catch (error) {
    // a C++ exception or an abort inside the kernel; its message is of no use to a user
    const memory = error instanceof RangeError || /memory|OOM|bad_alloc/i.test(String(error));
    const intake = memory
      ? refusedFile('memory limit', `${fileName} needs more memory than the reader may use.`)
      : refusedFile('unreadable file', `${fileName} could not be read: the geometry kernel gave up on it.`);
    return { id, intake, spoilt: true };
  }
};

parentPort?.on('message', (request: ReadRequest) => {
  void read(request).then((reply) => parentPort?.postMessage(reply));
});

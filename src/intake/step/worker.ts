import { parentPort, workerData } from 'node:worker_threads';
import type { Part } from '../../sheet/index.js';
import type { Intake } from '../refusal.js';
import { refusedFile } from './intakeOf.js';
import { threadCounter } from '../threadSeconds.js';
import { type BoundedKernel, KERNEL_MB, ONE_FILE, loadBoundedKernel } from './kernel.js';
import { readSolids } from './readSolids.js';

export interface ReadRequest {
  readonly id: number;
  readonly bytes: Uint8Array;
  readonly fileName: string;
  readonly unit?: Part['unit'];
  readonly sharpRadius?: number;
}

export interface ReadReply {
  readonly id: number;
  readonly intake: Intake;
  /** The kernel may be in disorder: use another worker for the next file. */
  readonly spoilt: boolean;
}

/** Posted once, when the kernel is loaded: from then on the time of the first file counts. */
export interface Ready {
  readonly ready: true;
  /** Where the system counts what this thread computes; null where it does not. */
  readonly counter: string | null;
}

const memoryLimit = (fileName: string): Intake =>
  refusedFile('memory limit', `${fileName} needs more memory than the reader may use (${KERNEL_MB} MB for its geometry).`, KERNEL_MB);

const read = ({ oc, refusedMemory }: BoundedKernel, { id, bytes, fileName, unit, sharpRadius }: ReadRequest): ReadReply => {
  try {
    const text = new TextDecoder('latin1').decode(bytes);
    const request = { fileName, text, ...(unit === undefined ? {} : { unit }), ...(sharpRadius === undefined ? {} : { sharpRadius }) };
    const intake = readSolids(oc, bytes, request);
    // what was made with too little memory may lack anything
    return refusedMemory() ? { id, intake: memoryLimit(fileName), spoilt: true } : { id, intake, spoilt: false };
  } catch (error) {
    // a C++ exception or an abort inside the kernel; its message is of no use to a user
    const memory = refusedMemory() || /memory|OOM|bad_alloc/i.test(String(error));
    const intake = memory ? memoryLimit(fileName) : refusedFile('unreadable file', `${fileName} could not be read: the geometry kernel gave up on it.`);
    return { id, intake, spoilt: true };
  }
};

const kernel = loadBoundedKernel(workerData === ONE_FILE);
void kernel.then(() => parentPort?.postMessage({ ready: true, counter: threadCounter() } satisfies Ready));
parentPort?.on('message', (request: ReadRequest) => {
  void kernel.then((loaded) => parentPort?.postMessage(read(loaded, request)));
});

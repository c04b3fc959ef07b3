import { Worker } from 'node:worker_threads';
import type { Part } from '../../sheet/index.js';
import type { Intake } from '../refusal.js';
import { refusedFile } from './intakeOf.js';
import { type Patience, patience } from '../patience.js';
import { threadSeconds } from '../threadSeconds.js';
import { ONE_FILE } from './kernel.js';
import type { ReadReply, ReadRequest, Ready } from './worker.js';

export interface ReadStepOptions {
  /** The most time allowed from the start of this file's reading, by the clock; of computing it is given less, by its size. Default 120. */
  readonly seconds?: number;
  /** Gives the reading up; the file is then refused as 'cancelled'. */
  readonly signal?: AbortSignal;
  /** The unit that the file is in, whatever it declares. */
  readonly unit?: Part['unit'];
  /** mm, the inside radius of bends drawn sharp; without it the thickness (common practice, no source). */
  readonly sharpRadius?: number;
  /** This process reads this file and ends: the quickest way to a first answer, slower for later files. */
  readonly once?: boolean;
}

const SECONDS = 120;
/**
 * s that a file is given: a small one 5, then 20 for each MB up to 9; a larger one 4.5 for each MB. It ends when the reader's thread has computed so much, and so much has
 * passed by the clock, or all threads of the process 8/5 of it (they collect its memory).
 * Several times what sound files take; the published part with most faces, 1.7 MB, took about 7 when read both ways by a fresh kernel on a busy machine.
 */
const secondsFor = (bytes: number): number => Math.max(5, Math.min(9, (20 * bytes) / 1e6), (4.5 * bytes) / 1e6);
/** Of what the process computes, the least that counts as the file's: 5 s are at most 8 of all threads. */
const SHARE = 5 / 8;
/** s: a sound file that only wanted memory is read again in less; where less is left it is not tried. */
const LEAST_AGAIN = 1.5;
/** Bytes: the largest file taken in. The largest of the published test parts has 2.3 million. */
const MOST_BYTES = 64 * 2 ** 20;
/** The kernel's heap only grows: after this many files a fresh worker takes over. */
const READS_PER_WORKER = 20;
/** A warm worker holds some 300 MB; it is let go after this long without work. ms */
const KEPT_WARM = 120_000;
/** MB of JavaScript heap; the kernel's own heap is bounded beside it. */
const HEAP_MB = 320;

let warm: { readonly worker: Worker; reads: number; counter: string | null } | undefined;
let idle: NodeJS.Timeout | undefined;
let queue: Promise<unknown> = Promise.resolve();
let lastId = 0;

/** The compiled worker, also when this module itself runs as TypeScript source in a test. */
const workerUrl = (): URL => {
  const own = import.meta.url;
  return new URL('./worker.js', own.endsWith('.ts') ? own.replace('/src/', '/dist/') : own);
};

const startWorker = (once: boolean): Worker => {
  const worker = new Worker(workerUrl(), { ...(once ? { workerData: ONE_FILE } : {}), execArgv: [], resourceLimits: { maxOldGenerationSizeMb: HEAP_MB }, stdout: true, stderr: true });
  // while it rests or dies nobody else listens, and an error without a listener would bring the process down
  worker.on('error', () => undefined);
  // it may be ready before a file waits for it
  worker.on('message', (reply: ReadReply | Ready) => {
    if (warm?.worker === worker && 'ready' in reply) warm.counter = reply.counter;
  });
  worker.on('exit', () => {
    if (warm?.worker === worker) warm = undefined;
  });
  return worker;
};

const takeWorker = (once: boolean): NonNullable<typeof warm> => {
  clearTimeout(idle);
  warm ??= { worker: startWorker(once), reads: 0, counter: null };
  warm.reads++;
  warm.worker.ref();
  return warm;
};

const dropWorker = async (): Promise<void> => {
  clearTimeout(idle);
  const old = warm;
  warm = undefined;
  await old?.worker.terminate();
};

/** Leaves the worker warm for the next file, without keeping the process alive. */
const rest = async (reads: number, spoilt: boolean): Promise<void> => {
  if (spoilt || reads >= READS_PER_WORKER) return dropWorker();
  warm?.worker.unref();
  idle = setTimeout(() => void dropWorker(), KEPT_WARM);
  idle.unref();
};

/** What a reading computes, s; undefined where threads are not counted: then the process. */
const computedBy = (counter: string | null): (() => number) | undefined => (counter === null ? undefined : threadSeconds(counter, SHARE));

/** A reading, and what of the time given is left, in s of computing. */
interface Reading {
  readonly intake: Intake;
  readonly left: number;
}

const unread = (intake: Intake): Promise<Reading> => Promise.resolve({ intake, left: 0 });

/** `left`: what an earlier reading of the same file has left of the time given, s. */
const readOne = (bytes: Uint8Array, fileName: string, options: ReadStepOptions, left = Infinity): Promise<Reading> => {
  if (options.signal?.aborted) return unread(refusedFile('cancelled', `${fileName} was not read: the reading was cancelled.`));
  if (bytes.length === 0) return unread(refusedFile('empty file', `${fileName} is empty: it has 0 bytes.`, 0));
  if (bytes.length > MOST_BYTES) {
    const sentence = `${fileName} has ${(bytes.length / 2 ** 20).toFixed(0)} MiB; STEP files are read up to ${MOST_BYTES / 2 ** 20} MiB.`;
    return unread(refusedFile('too large', sentence, bytes.length));
  }
  const most = options.seconds ?? SECONDS;
  const allowed = Math.min(most, secondsFor(bytes.length));
  const seconds = Math.min(allowed, left);
  const taken = takeWorker(options.once ?? false);
  const { worker, reads } = taken;
  const id = ++lastId;
  return new Promise((resolve, reject) => {
    const settle = (act: () => void, spoilt: boolean): void => {
      limit.stop();
      options.signal?.removeEventListener('abort', onAbort);
      // one by one: the worker's own bookkeeping hangs on listeners too
      worker.off('message', onMessage).off('exit', onExit).off('error', onError);
      void rest(reads, spoilt).then(act);
    };
    const finish = (intake: Intake, spoilt: boolean): void => {
      const unused = seconds - limit.used();
      settle(() => resolve({ intake, left: unused }), spoilt);
    };
    const onAbort = (): void => finish(refusedFile('cancelled', `${fileName} was not read: the reading was cancelled.`), true);
    const onMessage = (reply: ReadReply | Ready): void => {
      if ('ready' in reply) {
        limit.again(computedBy(taken.counter));
      }
      else if (reply.id === id) finish(reply.intake, reply.spoilt);
    };
    const onExit = (): void => finish(refusedFile('unreadable file', `${fileName} could not be read: the reader ended without an answer.`), true);
    const onError = (error: NodeJS.ErrnoException): void => {
      if (error.code === 'ERR_WORKER_OUT_OF_MEMORY') finish(refusedFile('memory limit', `${fileName} needs more memory than the reader may use (${HEAP_MB} MB).`, HEAP_MB), true);
      else settle(() => reject(new Error(`the STEP reader's worker failed: ${error.message}`)), true);
    };
    const limit: Patience = patience(seconds, most, () => {
      const sentence = `${fileName} was not read within ${Number(allowed.toFixed(3))} s.`;
      finish(refusedFile('time limit', sentence, allowed), true);
    }, computedBy(taken.counter));
    options.signal?.addEventListener('abort', onAbort, { once: true });
    worker.on('message', onMessage).on('exit', onExit).on('error', onError);
    const request: ReadRequest = { id, bytes, fileName, ...(options.unit === undefined ? {} : { unit: options.unit }), ...(options.sharpRadius === undefined ? {} : { sharpRadius: options.sharpRadius }) };
    worker.postMessage(request);
  });
};

/**
 * Reads a STEP file's bodies as sheet-metal parts. Bad input never throws: what cannot be read is refused with a
 * reason. Files are read one after another in a worker thread that is killed at its time limit.
 *
 * @example
 * const { parts, refused } = await readStep(await readFile('bracket.step'), 'bracket.step');
 */
export const readStep = (bytes: Uint8Array, fileName: string, options: ReadStepOptions = {}): Promise<Intake> => {
  const turn = queue.then(async () => {
    const reads = warm?.reads ?? 0;
    const { intake, left } = await readOne(bytes, fileName, options);
    // what earlier files left in the worker's memory must not count against this one
    const again = reads > 0 && left > LEAST_AGAIN && intake.refused[0]?.code === 'memory limit';
    return again ? (await readOne(bytes, fileName, options, left)).intake : intake;
  });
  queue = turn.catch(() => undefined);
  return turn;
};

/** Begins to load the geometry kernel for a file that will be read soon: it takes about as long as what its caller does until then. */
export const startStepReader = (once: boolean): void => {
  warm ??= { worker: startWorker(once), reads: 0, counter: null };
  warm.worker.unref();
};

/** Lets the warm worker go at once; the next file starts a new one. */
export const closeStepReader = (): Promise<void> => {
  const turn = queue.then(dropWorker);
  queue = turn;
  return turn;
};

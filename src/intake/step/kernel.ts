import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { setFlagsFromString } from 'node:v8';
import type { OpenCascadeInstance } from 'replicad-opencascadejs';

export type Kernel = OpenCascadeInstance;

/** What a worker is started with when it will read one file only. */
export const ONE_FILE = 'one file';

/**
 * Loads OpenCascade once, its printing silenced. It takes about a second and some 100 MB. For `once`, a process that reads
 * one file and ends, the optimising compiler is kept out: on one file it costs twice the time that it saves.
 */
export const loadKernel = async (once = false): Promise<Kernel> => {
  if (once) setFlagsFromString('--liftoff-only');
  const quiet = (): void => undefined;
  const module = await import('replicad-opencascadejs');
  const wasmBinary = await readFile(createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm'));
  return module.default({ wasmBinary, print: quiet, printErr: quiet });
};

import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { OpenCascadeInstance } from 'replicad-opencascadejs';

export type Kernel = OpenCascadeInstance;

/** Loads OpenCascade once, its printing silenced. It takes about a second and some 100 MB. */
export const loadKernel = async (): Promise<Kernel> => {
  const quiet = (): void => undefined;
  const module = await import('replicad-opencascadejs');
  const wasmBinary = await readFile(createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm'));
  return module.default({ wasmBinary, print: quiet, printErr: quiet });
};

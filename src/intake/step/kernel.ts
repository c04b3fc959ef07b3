import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { setFlagsFromString } from 'node:v8';
import type { OpenCascadeInstance } from 'replicad-opencascadejs';

export type Kernel = OpenCascadeInstance;

/** What a worker is started with when it will read one file only. */
export const ONE_FILE = 'one file';

/** MB that the kernel's own heap may grow to in a reading: with the worker's JavaScript heap and the process itself under 1 GiB. */
export const KERNEL_MB = 512;
const PAGE = 65_536;

const quiet = (): void => undefined;

/** The kernel, its memory handed to `took` before it runs. */
const load = async (once: boolean, took: (memory: WebAssembly.Memory) => void): Promise<Kernel> => {
  if (once) setFlagsFromString('--liftoff-only');
  const { default: start } = await import('replicad-opencascadejs');
  const code = await WebAssembly.compile(await readFile(createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm')));
  const instantiateWasm = (imports: WebAssembly.Imports, done: (instance: WebAssembly.Instance) => void): object => {
    const instance = new WebAssembly.Instance(code, imports);
    for (const it of Object.values(instance.exports)) if (it instanceof WebAssembly.Memory) took(it);
    done(instance);
    return {};
  };
  return start({ instantiateWasm, print: quiet, printErr: quiet });
};

/**
 * Loads OpenCascade once, its printing silenced. It takes about a second and some 100 MB. For `once`, a process that reads
 * one file and ends, the optimising compiler is kept out: on one file it costs twice the time that it saves.
 */
export const loadKernel = (once = false): Promise<Kernel> => load(once, quiet);

/** A kernel whose heap is bounded, and whether it was refused memory since it was loaded: what it says then is not to be trusted. */
export interface BoundedKernel {
  readonly oc: Kernel;
  readonly refusedMemory: () => boolean;
}

/** As `loadKernel`, its heap held below `KERNEL_MB`. */
export const loadBoundedKernel = async (once: boolean): Promise<BoundedKernel> => {
  let refused = false;
  // the module's own way to ask for more; it catches what is thrown and tells the kernel that there is none
  const oc = await load(once, (memory) => {
    const grow = memory.grow.bind(memory);
    memory.grow = (pages) => {
      if (memory.buffer.byteLength + pages * PAGE <= KERNEL_MB * 2 ** 20) return grow(pages);
      refused = true;
      throw new RangeError('the kernel has no more memory');
    };
  });
  return { oc, refusedMemory: () => refused };
};

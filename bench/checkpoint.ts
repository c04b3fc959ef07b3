import { createHash } from 'node:crypto';
import { appendFileSync, existsSync, mkdirSync, readFileSync, readdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The compiled code that runs here: what is measured and what measures, one beside the other. */
const COMPILED = fileURLToPath(new URL('..', import.meta.url));

/** Names the code under a folder by what its compiled files hold. */
export const codeOf = (folder: string): string => {
  const hash = createHash('sha256');
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((f) => f.isFile() && f.name.endsWith('.js')).map((f) => join(f.parentPath, f.name)).sort();
  for (const file of files) hash.update(relative(folder, file)).update('\0').update(readFileSync(file)).update('\0');
  return hash.digest('hex').slice(0, 16);
};

/** Where a long run has got to: a line for each case done, with the code that made it. */
export interface Checkpoint<T> {
  /** What this very code has done so far. */
  readonly done: readonly T[];
  /** How many lines other code has left: they say nothing of this one. */
  readonly others: number;
  readonly add: (line: T) => void;
}

/** Opens the checkpoint at `file`; its folder is made where it is not there. `code`: whose lines count. */
export const openCheckpoint = <T extends object>(file: string, code = codeOf(COMPILED)): Checkpoint<T> => {
  mkdirSync(dirname(file), { recursive: true });
  const lines = existsSync(file) ? readFileSync(file, 'utf8').split('\n').filter((l) => l.trim() !== '').map((l) => JSON.parse(l) as T & { readonly code?: string }) : [];
  const done = lines.filter((l) => l.code === code);
  return { done, others: lines.length - done.length, add: (line) => appendFileSync(file, `${JSON.stringify({ ...line, code })}\n`) };
};

/** In words, what a run goes on from. Empty where it begins anew. */
export const goesOnFrom = ({ done, others }: Pick<Checkpoint<object>, 'done' | 'others'>, what: string, file: string): string =>
  [...(done.length > 0 ? [`goes on after ${done.length} ${what} of an earlier run`] : []), ...(others > 0 ? [`${others} lines of other code are not counted`] : [])].join('; ') + (done.length + others > 0 ? ` (${file})` : '');

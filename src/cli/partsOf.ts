import { basename } from 'node:path';
import type { NotRead } from '../fit/index.js';
import type { Part } from '../sheet/index.js';
import { Fault } from './fault.js';
import { type ReadOptions, readParts } from './readParts.js';

/** The bent bodies of all files, and those that are no part a brake can bend: told on standard error at once, and kept for what is handed out. */
export const partsOf = async (files: readonly string[], options: ReadOptions): Promise<{ readonly parts: readonly Part[]; readonly notRead: readonly NotRead[] }> => {
  const parts: Part[] = [];
  const notRead: NotRead[] = [];
  for (const file of files) {
    const read = await readParts(file, options);
    for (const { part } of read.parts) parts.push(part);
    const one = read.parts.length + read.refused.length === 1;
    for (const { index, name, sentence } of read.refused) {
      process.stderr.write(`${file}: body ${index} is refused: ${sentence}\n`);
      notRead.push({ part: one ? basename(file) : `${basename(file)}, ${name ?? `body ${index}`}`, sentence });
    }
  }
  if (parts.length === 0) throw new Fault('None of these files holds a part that can be bent.');
  return { parts, notRead };
};

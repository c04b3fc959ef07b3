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
    for (const { part, sameAs } of read.parts) if (sameAs === undefined) parts.push(part);
    for (const first of new Set(read.parts.flatMap(({ sameAs }) => sameAs ?? []))) {
      const twins = read.parts.filter(({ sameAs }) => sameAs === first).map(({ index }) => index);
      process.stderr.write(`${file}: ${twins.length > 1 ? 'bodies' : 'body'} ${twins.join(', ')} ${twins.length > 1 ? 'have' : 'has'} the shape of body ${first}, which is tried for all of them\n`);
    }
    const one = read.parts.length + read.refused.length === 1;
    for (const { index, name, sentence } of read.refused) {
      process.stderr.write(`${file}: body ${index} is refused: ${sentence}\n`);
      notRead.push({ part: one ? basename(file) : `${basename(file)}, ${name ?? `body ${index}`}`, sentence });
    }
  }
  if (parts.length === 0) throw new Fault('None of these files holds a part that can be bent.');
  return { parts, notRead };
};

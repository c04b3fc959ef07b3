import { readFile, stat } from 'node:fs/promises';
import { Fault } from './fault.js';

const words: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such file',
  EACCES: 'it may not be read',
  EPERM: 'it may not be read',
  EISDIR: 'it is a folder, not a file',
};

const codeOf = (fault: unknown): string =>
  fault instanceof Error && 'code' in fault && typeof fault.code === 'string' ? fault.code : 'unknown';

/** The bytes of a file named on the command line; a fault in one sentence where it has none. */
export const readBytes = async (path: string): Promise<Uint8Array> => {
  try {
    if ((await stat(path)).isDirectory()) throw new Fault(`${path}: it is a folder, not a file.`);
    const bytes = await readFile(path);
    if (bytes.length === 0) throw new Fault(`${path}: the file is empty.`);
    return bytes;
  } catch (fault) {
    if (fault instanceof Fault) throw fault;
    throw new Fault(`${path}: ${words[codeOf(fault)] ?? `it cannot be read (${codeOf(fault)})`}.`);
  }
};

import { rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Fault } from './fault.js';

const words: Readonly<Record<string, string>> = {
  ENOENT: 'its folder does not exist',
  ENOTDIR: 'its folder does not exist',
  EACCES: 'it may not be written',
  EPERM: 'it may not be written',
  EROFS: 'it may not be written',
  EISDIR: 'it is a folder, not a file',
  ENOSPC: 'the disk is full',
};

/** Writes the whole file or nothing: beside it first, then renamed into its place. */
export const writeWhole = async (path: string, content: string | Uint8Array): Promise<void> => {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    await writeFile(beside, content);
    await rename(beside, path);
  } catch (fault) {
    await rm(beside, { force: true }).catch(() => undefined);
    const code = fault instanceof Error && 'code' in fault ? String(fault.code) : 'unknown';
    throw new Fault(`${path}: ${words[code] ?? `it cannot be written (${code})`}.`);
  }
};

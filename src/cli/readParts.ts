import { basename } from 'node:path';
import { type Intake, readStep } from '../intake/index.js';
import type { Part } from '../sheet/index.js';
import { Fault } from './fault.js';
import { wholeNumber } from './numbers.js';
import { readBytes } from './readFile.js';

/** Reading one file may take this long. s */
const READ_SECONDS = 120;

/** The bodies of a part file, each read or refused by itself. */
export const readParts = async (path: string): Promise<Intake> => {
  const bytes = await readBytes(path);
  return readStep(bytes, basename(path), { seconds: READ_SECONDS });
};

/** One part of the file: the one of that number, or the only one. */
export const readOnePart = async (path: string, number: string | undefined): Promise<Part> => {
  const { parts, refused } = await readParts(path);
  if (number !== undefined) {
    const index = wholeNumber('--part', number, 0, 100_000);
    const found = parts.find((entry) => entry.index === index);
    if (found) return found.part;
    const why = refused.find((entry) => entry.index === index);
    throw new Fault(why ? `${path}: body ${index} is refused: ${why.sentence}` : `${path}: it has no body ${index} (the first is 0).`);
  }
  if (parts.length === 1) return parts[0]!.part;
  if (parts.length === 0) {
    const more = refused.length > 1 ? ` (and ${refused.length - 1} more bodies refused)` : '';
    throw new Fault(`${path}: ${refused[0]?.sentence ?? 'it holds no part.'}${more}`);
  }
  const choices = parts.map(({ index, part }) => `${index} ${part.name}`).join(', ');
  throw new Fault(`${path}: it holds ${parts.length} parts; choose one with --part: ${choices}.`);
};

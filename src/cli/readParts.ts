import { basename, extname } from 'node:path';
import { type Intake, readStep } from '../intake/index.js';
import type { Part } from '../sheet/index.js';
import { Fault } from './fault.js';
import { positive, wholeNumber } from './numbers.js';
import { readBytes } from './readFile.js';
import { readProfile } from './readProfile.js';

/** Reading one file may take this long. s */
const READ_SECONDS = 120;

export interface ReadOptions {
  readonly sharpRadius?: string;
}

/** What a command that reads a part calls its file. */
export const PART_FILE = 'a STEP file, or a typed-in profile as .json (docs/api.md)';

/** The bodies of a part file, each read or refused by itself. */
export const readParts = async (path: string, { sharpRadius }: ReadOptions): Promise<Intake> => {
  const bytes = await readBytes(path);
  if (extname(path).toLowerCase() === '.json') return readProfile(path, bytes);
  return readStep(bytes, basename(path), {
    seconds: READ_SECONDS,
    ...(sharpRadius === undefined ? {} : { sharpRadius: positive('--sharp-radius', sharpRadius) }),
  });
};

/** One part of the file: the one of that number, or the only one. */
export const readOnePart = async (path: string, options: ReadOptions & { readonly part?: string }): Promise<Part> => {
  const number = options.part;
  const { parts, refused } = await readParts(path, options);
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

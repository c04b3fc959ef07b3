import { basename, extname } from 'node:path';
import { type Command } from 'commander';
import { type Intake, readStep } from '../intake/index.js';
import type { Part } from '../sheet/index.js';
import { type DrawingOptions, drawingOptions, readDrawing } from './readDrawing.js';
import { Fault } from './fault.js';
import { positive, wholeNumber } from './numbers.js';
import { readBytes } from './readFile.js';
import { readProfile } from './readProfile.js';
import { ruleOf } from './rule.js';

/** Reading one file may take this long. s */
const READ_SECONDS = 120;

export interface ReadOptions extends DrawingOptions {
  readonly sharpRadius?: string;
}

/** The options of a command that reads a part. */
export const readingOptions = (command: Command): Command =>
  drawingOptions(command.option('--sharp-radius <mm>', 'inside radius of bends that are drawn sharp (default: the thickness)'));

/** What a command that reads a part calls its file. */
export const PART_FILE = 'a STEP file, a flat as .dxf, or a typed-in profile as .json (docs/api.md)';

const FLATS_ONLY = { thickness: '--thickness', bendAngle: '--bend-angle', bendRadius: '--bend-radius', bendSide: '--bend-side', bend: '--bend', layer: '--layer', gap: '--gap' } as const;

/** The same of the only file that is asked about: what is told of a flat and would be passed over is a fault. Of several files it is for those that are flats. */
export const readOnlyFile = async (path: string, options: ReadOptions): Promise<Intake> => {
  const told = Object.entries(FLATS_ONLY).filter(([name]) => options[name as keyof typeof FLATS_ONLY] !== undefined);
  if (told.length > 0 && extname(path).toLowerCase() !== '.dxf') throw new Fault(`${told[0]![1]} tells something of a flat as .dxf; ${basename(path)} is none and says it itself.`);
  return readParts(path, options);
};

/** The bodies of a part file, each read or refused by itself. */
export const readParts = async (path: string, options: ReadOptions): Promise<Intake> => {
  const { sharpRadius, unit } = options;
  ruleOf(options); // a rule that there is not is a fault before anything is read
  const bytes = await readBytes(path);
  if (extname(path).toLowerCase() === '.dxf') return readDrawing(path, bytes, options);
  if (extname(path).toLowerCase() === '.json') return readProfile(path, bytes);
  return readStep(bytes, basename(path), {
    seconds: READ_SECONDS,
    once: true,
    ...(unit === undefined ? {} : { unit }),
    ...(sharpRadius === undefined ? {} : { sharpRadius: positive('--sharp-radius', sharpRadius) }),
  });
};

/** One part of the file: the one of that number, or the only one. */
export const readOnePart = async (path: string, options: ReadOptions & { readonly part?: string }): Promise<Part> => {
  const number = options.part;
  const { parts, refused } = await readOnlyFile(path, options);
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

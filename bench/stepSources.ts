import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { loadKernel } from '../src/intake/step/kernel.js';
import { writeStep } from '../src/intake/step/writeStep.js';
import { randomPart } from './roundTrip.js';

/** Bytes above which a published file is left out: damage in a small file is as good, and read ten times as often. */
const LARGEST = 130_000;
const WRITTEN = 4;

/** Sound STEP files: the small ones of the published parts, where they are there, and random parts that this program writes. */
export const soundSteps = async (): Promise<readonly Uint8Array[]> => {
  const folder = resolve('../shared/parts');
  const files = existsSync(folder) ? readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => /\.ste?p$/i.test(name)).sort() : [];
  const published = files.map((name) => readFileSync(resolve(folder, name))).filter(({ length }) => length < LARGEST);
  const oc = await loadKernel(true);
  const own = Array.from({ length: WRITTEN }, (_, i) => {
    const part = randomPart(1 + i);
    const written = writeStep(oc, part, part.bends.map(() => 1));
    return 'text' in written ? [Buffer.from(written.text, 'latin1')] : [];
  }).flat();
  return [...published, ...own];
};

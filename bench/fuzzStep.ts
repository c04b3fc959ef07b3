// npm run bench -- fuzzStep 5000 [first seed] [seconds]: damaged and hostile STEP files, read as the program reads them (in a worker with its
// limits of time and memory). `seconds` by the clock is what each is given at most: the program's own limit where it is left out.
import { closeStepReader, readStep } from '../src/intake/index.js';
import { develop } from '../src/sheet/index.js';
import { damagedStep } from './damagedStep.js';
import { fuzzRun } from './fuzzRun.js';
import { soundSteps } from './stepSources.js';

const allowed = process.argv[4] === undefined ? {} : { seconds: Number(process.argv[4]) };
const sound = await soundSteps();
// the first file of a process waits for the kernel too
await readStep(sound[0] ?? new Uint8Array([0]), 'sound.step');
const bad = await fuzzRun({
  kind: 'step', count: Number(process.argv[2] ?? 5000), first: Number(process.argv[3] ?? 1),
  bytes: (seed) => damagedStep(seed, sound),
  read: async (bytes, seed) => {
    const { parts, refused } = await readStep(bytes, `damaged ${seed}.step`, allowed);
    // what was read must be a part that can be worked with
    for (const { part } of parts) develop(part, { name: 'K-factor', k: 0.44 });
    if (parts.length + refused.length === 0) throw new Error('neither a part nor a sentence');
    return { end: refused[0]?.code ?? 'read', sentences: refused.map(({ sentence }) => sentence) };
  },
});
await closeStepReader();
process.exitCode = bad > 0 ? 1 : 0;

import { readFileSync } from 'node:fs';
import { afterAll, expect, it } from 'vitest';
import { damagedStep } from '../../bench/damagedStep.js';
import { soundSteps } from '../../bench/stepSources.js';
import { signedArea } from '../geometry/index.js';
import { blank, develop } from '../sheet/index.js';
import { closeStepReader, readStep } from './index.js';
import { processSeconds } from './threadSeconds.js';

// These run the compiled worker from dist/: build first. The long form is npm run bench -- fuzzStep.
/** The first of each way to damage a file, then those of the first hundred whose damage leaves a sound solid. */
const SEEDS = [...Array.from({ length: 16 }, (_, i) => i + 1), 35, 45, 79, 86, 87];

afterAll(closeStepReader);

it(`damaged and hostile STEP files end in a part or a sentence, seeds ${SEEDS.join(' ')}`, { timeout: 240_000 }, async () => {
  const sound = await soundSteps();
  const ends = new Set<string>();
  let read = 0;
  for (const seed of SEEDS) {
    const { parts, refused } = await readStep(damagedStep(seed, sound), `damaged ${seed}.step`);
    expect(parts.length + refused.length, `seed ${seed}`).toBeGreaterThan(0);
    for (const { sentence } of refused) expect(sentence, `seed ${seed}`).toMatch(/^\S[^]{10,}\.$/);
    for (const { part } of parts) {
      read += 1;
      // a tree of plates, and a blank that holds as much metal as the solid (K = 0.5 keeps the volume), or the part says by how much it does not
      expect(part.bends.length, `seed ${seed}`).toBe(part.plates.length - 1);
      const flat = blank(develop(part, { name: 'K-factor', k: 0.5 }));
      if (!flat.ok) throw new Error(`seed ${seed}: ${flat.failure.sentence}`);
      const area = [flat.value.outline, ...flat.value.holes].reduce((sum, c) => sum + signedArea(c), 0);
      const said = part.assumptions.map(({ sentence }) => /make ([\d.]+) % (less|more) metal/.exec(sentence)).find((found) => found !== null);
      const percent = said ? Number(said[1]) * (said[2] === 'less' ? -1 : 1) : 0;
      expect(Math.abs(100 * ((area * part.thickness) / part.volume! - 1) - percent), `seed ${seed}`).toBeLessThan(SAID_WITHIN);
    }
    ends.add(refused[0]?.code ?? 'read');
  }
  // not all of them may die at the door. Without the published files beside the project other ones are damaged
  expect(ends.size).toBeGreaterThan(3);
  if (sound.length > OWN) expect(read).toBeGreaterThanOrEqual(5);
});

// Three were found to compute for 12.6 to 13.2 s; the slowest stands for them (all three: npm run bench -- fuzzStep 1 SEED). The rule: the reader's own thread
// computes for 5 s at most, the whole process for 8; a second reading has only what the first left. Loading the kernel is not the file's: what a sound
// file takes with it is measured on the same machine and taken off.
it('took too long once: now it ends inside 10 s of computing, read by a worker that has read before', { timeout: 120_000 }, async () => {
  const { seed } = JSON.parse(readFileSync(new URL('../../test/repro/intake/step-seed-1000.json', import.meta.url), 'utf8')) as { readonly seed: number };
  const sound = await soundSteps();
  const damaged = damagedStep(seed, sound);
  await closeStepReader();
  const loading = await computed(() => readStep(sound[0]!, 'sound.step'));
  const took = await computed(async () => {
    const { parts, refused } = await readStep(damaged, `damaged ${seed}.step`);
    expect(parts.length + refused.length).toBeGreaterThan(0);
  });
  console.log(`the kernel and a sound file: ${loading.toFixed(1)} s of computing, the damaged file ${took.toFixed(1)} s`);
  expect(took - loading).toBeLessThan(10);
});

/** s that the process computes until `act` has ended. */
const computed = async (act: () => Promise<unknown>): Promise<number> => {
  const before = processSeconds();
  await act();
  return processSeconds() - before;
};

/** Per cent of its metal about which a part may be silent. */
const SAID_WITHIN = 1;
/** Sound files that the program writes itself. */
const OWN = 4;

import { afterAll, expect, it } from 'vitest';
import { damagedStep } from '../../bench/damagedStep.js';
import { soundSteps } from '../../bench/stepSources.js';
import { closeStepReader, readStep } from './index.js';

// These run the compiled worker from dist/: build first. The long form is npm run bench -- fuzzStep.
const FIRST = 1;
const COUNT = 30;

afterAll(closeStepReader);

it(`damaged and hostile STEP files end in a part or a sentence, seeds ${FIRST} to ${FIRST + COUNT - 1}`, { timeout: 240_000 }, async () => {
  const sound = await soundSteps();
  const ends = new Set<string>();
  for (let seed = FIRST; seed < FIRST + COUNT; seed++) {
    const { parts, refused } = await readStep(damagedStep(seed, sound), `damaged ${seed}.step`);
    expect(parts.length + refused.length, `seed ${seed}`).toBeGreaterThan(0);
    for (const { sentence } of refused) expect(sentence, `seed ${seed}`).toMatch(/^\S[^]{10,}\.$/);
    ends.add(refused[0]?.code ?? 'read');
  }
  // not all of them may die at the door: some reach what is asked of a sound solid
  expect(['read', 'no constant thickness', 'closed section'].some((end) => ends.has(end))).toBe(true);
  expect(ends.size).toBeGreaterThan(3);
});

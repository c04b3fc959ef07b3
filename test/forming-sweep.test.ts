import { expect, it } from 'vitest';
import { formingSweep, sweepInWords } from '../bench/formingSweep.js';

const SEED = 20261125;

it(`springback, force, depth, radius and deduction go the way they must over metals, V, thickness and angle (seed ${SEED}; 3000 in bench:full)`, { timeout: 60_000 }, () => {
  const sweep = formingSweep(60, SEED);
  console.log(sweepInWords(sweep));
  expect(sweep.answered).toBeGreaterThan(150);
  expect(sweep.breaks).toEqual([]);
});

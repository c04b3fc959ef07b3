import { expect, it } from 'vitest';
import { formingSweep } from '../bench/formingSweep.js';

const SEED = 20261125;

it(`springback, force, depth, radius and deduction go the way they must over metals, V, thickness and angle (seed ${SEED}; 3000 in bench:full)`, { timeout: 60_000 }, () => {
  const { answered, rough, breaks, secondRises, greatestDip } = formingSweep(60, SEED);
  console.log(`${answered} bends, ${rough} of them rough by their own warning; ${secondRises} strokes of blunt noses rise a second time after falling by ${(100 * greatestDip).toFixed(2)} % at most`);
  expect(answered).toBeGreaterThan(150);
  expect(breaks).toEqual([]);
});

import { type Part, profilePart } from '../../src/sheet/index.js';
import { mulberry32 } from '../mulberry32.js';
import { randomTray, randomTree } from '../random.js';
import type { Family } from './families.js';

/** A profile of 2 or 3 bends of 80 to 100 degrees to the same side: legs that close in on the punch. */
const closingProfile = (seed: number): Part => {
  const random = mulberry32(seed);
  const n = 2 + (seed % 2);
  const built = profilePart({
    name: `closing profile, seed ${seed}, ${n} bends`, thickness: 1.5, insideRadius: 1.5,
    width: 80 + Math.round(200 * random()),
    flanges: Array.from({ length: n + 1 }, (_, i) => Math.round(i === 0 || i === n ? 45 + 40 * random() : 30 + 35 * random())),
    turns: Array.from({ length: n }, () => Math.round(80 + 20 * random())),
  });
  if (!built.ok) throw new Error(`seed ${seed}: ${built.failure.sentence}`);
  return built.value;
};

/** A seeded part that a straight punch alone often cannot make: trays with inward returns on four arms, or three. */
export const refusablePart = (family: Family, seed: number): Part => {
  if (family === 'serial') return closingProfile(seed);
  return family === 'tree' ? randomTree(seed, 5 + (seed % 4)) : randomTray(seed, seed % 20 === 0 ? 3 : 4, 2);
};

import { expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { profilePart } from '../sheet/index.js';
import { demoRack } from '../shop/index.js';
import { formedHem } from './hemTooling.js';

const made = profilePart({ name: 'hem', thickness: 1, insideRadius: 2, width: 100, flanges: [40, { length: 12, measure: 'flat' }], turns: [180] });
if (!made.ok) throw new Error(made.failure.sentence);
const die = demoRack().dies.filter(({ shape, includedAngle }) => shape === 'V' && includedAngle < 40)[0]!;
const hemOf = (bendAngle: number): ReturnType<typeof formedHem> =>
  formedHem(metalById('dc01')!, { ...made.value, bends: made.value.bends.map((bend) => ({ ...bend, bendAngle })) }, 0, die, 0.6);

it('refuses a tear-drop, which no flattening closes, and takes the hem that lies flat', () => {
  expect(hemOf(215)).toMatchObject({ code: 'hem', bends: ['b1'], by: 35, sentence: expect.stringContaining('215.0 degrees of bend angle') });
  expect(hemOf(180)).toHaveProperty('hem');
});

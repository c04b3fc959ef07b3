import { expect, it } from 'vitest';
import { foldShares } from './foldShares.js';
import { profilePart } from './profilePart.js';

const made = profilePart({ name: 'hat', thickness: 1, insideRadius: 1, width: 50, flanges: [20, 30, 20], turns: [90, 90] });
if (!made.ok) throw new Error(made.failure.sentence);
const part = made.value;

it('reads one share for all bends, or some by name', () => {
  expect(foldShares(part, undefined)).toEqual({ ok: true, value: [1, 1] });
  expect(foldShares(part, '0.25')).toEqual({ ok: true, value: [0.25, 0.25] });
  expect(foldShares(part, 'b2=0')).toEqual({ ok: true, value: [1, 0] });
});

it('refuses what is no share and no bend', () => {
  for (const wrong of ['2', '-1', '', 'b2=', 'b2=half', 'b9=0.5']) expect(foldShares(part, wrong).ok, wrong).toBe(false);
});

import { expect, it } from 'vitest';
import { profilePart } from '../sheet/index.js';
import { withTolerances } from './tolerances.js';

const made = profilePart({ name: 'channel', thickness: 2, insideRadius: 2, width: 100, flanges: [30, 60, 30], turns: [90, 90] });
if (!made.ok) throw new Error(made.failure.sentence);
const part = made.value;
const asked = (...typed: string[]): (string | number | undefined)[] => withTolerances(part, typed).dimensions!.map((it) => it.tolerance ?? it.class);

it('sets one tolerance or class for all, and some by name', () => {
  expect(withTolerances(part, undefined)).toBe(part);
  expect(asked('0.2')).toEqual([0.2, 0.2, 0.2]);
  expect(asked('m', 'd2=0.1')).toEqual(['m', 0.1, 'm']);
  expect(asked('d3=f')).toEqual([undefined, undefined, 'f']);
});

it('refuses what is no tolerance and no dimension', () => {
  for (const wrong of ['-1', 'x', '0', 'd9=0.1', 'd1=']) expect(() => withTolerances(part, [wrong]), wrong).toThrow('--tolerance');
});

import { expect, it } from 'vitest';
import { develop } from './develop.js';
import { valueOf } from './dimension.js';
import { dimensionFault } from './dimensionFault.js';
import type { Feature } from './part.js';
import { profilePart } from './profilePart.js';

// a channel: flanges 30 outside, web 60 outside, t 2, r 2, 100 wide
const made = profilePart({ name: 'channel', thickness: 2, insideRadius: 2, width: 100, flanges: [30, 60, 30], turns: [90, 90] });
if (!made.ok) throw new Error(made.failure.sentence);
const sheet = develop(made.value, { name: 'K-factor', k: 0.44 });
const face = (plate: number, side: 'A' | 'B'): Feature => ({ kind: 'face', plate, side });

it('takes two parallel faces, whichever they are', () => {
  expect(dimensionFault(sheet, { between: [face(0, 'B'), face(2, 'B')] })).toBeNull();
  expect(valueOf(sheet, { between: [face(0, 'B'), face(2, 'B')] })).toBeCloseTo(60, 6);
  // inside: 60 less twice the thickness
  expect(valueOf(sheet, { between: [face(0, 'A'), face(2, 'A')] })).toBeCloseTo(56, 6);
  expect(dimensionFault(sheet, { between: [face(1, 'A'), face(1, 'B')] })).toBeNull();
});

it('refuses what is not parallel, what is one plane and what is not there', () => {
  expect(dimensionFault(sheet, { between: [face(0, 'B'), face(1, 'B')] })).toMatch(/90\.0 degrees/);
  expect(dimensionFault(sheet, { between: [face(0, 'B'), face(0, 'B')] })).toMatch(/one plane/);
  expect(dimensionFault(sheet, { between: [face(7, 'B'), face(0, 'B')] })).toMatch(/no plate 8/);
  expect(dimensionFault(sheet, { between: [{ kind: 'corner', plate: 2, bend: 0 }, face(0, 'B')] })).toMatch(/b1 does not join plate 3/);
});

import { expect, it } from 'vitest';
import { defaultDimensions } from './defaultDimensions.js';
import { develop } from './develop.js';
import { valueOf } from './dimension.js';
import type { Part } from './part.js';
import { profilePart } from './profilePart.js';

/** An angle of 40 and 60 mm outside, 100 mm wide, whose 60 mm flange ends shorter by `drop` mm on one side. */
const tapered = (drop: number): Part => {
  const made = profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  const [base, flange] = made.value.plates;
  const furthest = flange!.outline.reduce((most, { y }, i, all) => (y > all[most]!.y ? i : most), 0);
  return { ...made.value, plates: [base!, { ...flange!, outline: flange!.outline.map((v, i) => (i === furthest ? { ...v, y: v.y - drop } : v)) }] };
};

const lengths = (part: Part): readonly number[] => {
  const sheet = develop(part, { name: 'K-factor', k: 0.44 });
  return defaultDimensions(sheet).map((dimension) => valueOf(sheet, dimension));
};

it('a flange whose edge tapers has no one length, so it is given no dimension; one that is out by hundredths has', () => {
  expect(lengths(tapered(0))).toEqual([expect.closeTo(40, 9), expect.closeTo(60, 9)]);
  // 0.05 mm over 100 mm: 0.03 degrees
  expect(lengths(tapered(0.05))).toHaveLength(2);
  // 2.5 degrees: its ends are 55.6 and 60 mm long
  expect(lengths(tapered(4.4))).toEqual([expect.closeTo(40, 9)]);
});

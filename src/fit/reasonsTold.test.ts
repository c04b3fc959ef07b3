import { expect, it } from 'vitest';
import type { Reason } from '../trial/index.js';
import { reasonsTold } from './reasonsTold.js';

const reason = (code: Reason['code'], sentence: string): Reason => ({ code, sentence, bends: [] });
const d5 = (mm: string): string => `Dimension d5 (face to face, 111.70 mm ± 0.15) scatters by ${mm} mm on Long, 200 t at the best stops and order tried (root-sum-square).`;
const short = (v: number, mm: string): string => `At bend b1 the base is too short for V ${v} die, 85 degrees included by ${mm} mm: the flat beside the bend reaches 5.3 mm from its middle and this V asks more.`;

it('tells a dimension once with its least scatter, and one pair of tools once for all its bends', () => {
  expect(reasonsTold([
    reason('tolerance', d5('0.80')), reason('tolerance', d5('0.58')), reason('daylight', 'At bend b5 and b6 with Punch X over V 12: 5 mm stay open.'), reason('tolerance', d5('1.03')),
    reason('daylight', 'At bend b3 with Punch X over V 12: 5 mm stay open.'), reason('clearance', 'At bend b1 the base meets the punch.'),
  ])).toEqual([
    { sentence: d5('0.58'), reason: 1 }, { sentence: 'At bends b5 and b6; b3 with Punch X over V 12: 5 mm stay open.', reason: 2 }, { sentence: 'At bend b1 the base meets the punch.', reason: 5 },
  ]);
});

it('tells a flange too short for every V with the V that it comes nearest to', () => {
  expect(reasonsTold([reason('short flange', short(24, '10.1')), reason('short flange', short(12, '1.8')), reason('short flange', short(16, '4.6'))])).toEqual([{ sentence: short(12, '1.8'), reason: 1 }]);
});

it('tells what is the same of several pairs of tools of the first', () => {
  const open = (die: string, mm: number): Reason => reason('daylight', `At bend b1 with Punch X, tip radius 1 over ${die}: between punch and die ${mm} mm stay open.`);
  expect(reasonsTold([open('V 24', 5), open('V 20', 5), open('V 32', 0), open('V 16', 5)])).toEqual([
    { sentence: 'At bend b1 with Punch X, tip radius 1 over V 24 (and 2 more pairs of tools): between punch and die 5 mm stay open.', reason: 0 },
    { sentence: 'At bend b1 with Punch X, tip radius 1 over V 32: between punch and die 0 mm stay open.', reason: 2 },
  ]);
});

it('another dimension, and one that was not measured, stay reasons of their own', () => {
  const unmeasured = d5('0.58').replace(/scatters.*/s, 'cannot be promised on Long, 200 t: repeatability of the ram bears on it and was not measured.');
  expect(reasonsTold([reason('tolerance', d5('0.58')), reason('tolerance', unmeasured), reason('tolerance', d5('0.90').replace('d5', 'd6'))]).map((told) => told.reason)).toEqual([0, 1, 2]);
});

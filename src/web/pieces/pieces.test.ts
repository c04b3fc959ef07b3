import { expect, it } from 'vitest';
import { noNumber, typedNumber } from './pieces.js';

it('a measured figure is read with a point or a comma, and not where it may mean two things', () => {
  expect(['40.12', '40,12', '0,125', '1250'].map(typedNumber)).toEqual([40.12, 40.12, 0.125, 1250]);
  expect(['1,250', '', '40 mm', '1e3'].map((text) => Number.isNaN(typedNumber(text)))).toEqual([true, true, true, true]);
  expect(noNumber('Flange', '1,250')).toBe('Flange: 1,250 may mean 1250 or, with a decimal comma, 1.250: write the one that is meant, without a comma.');
  expect(noNumber('Flange', '40 mm')).toBe('Flange: "40 mm" is no figure.');
});

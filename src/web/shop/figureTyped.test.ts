import { describe, expect, it } from 'vitest';
import { faultWords } from './faultWords.js';
import { figureTyped, inUnit, twoReadings } from './figureTyped.js';

describe('a figure as it is typed', () => {
  it.each([['12', 12], ['12.', 12], ['0,125', 0.125], ['1 250', 1250], ['-3,5', -3.5], ['\u22125', -5], ['118000', 118000]])('reads %s', (text, value) => expect(figureTyped(text)).toBe(value));
  it.each(['', 'abc', '0x10', 'Infinity', '1e9', '125 mm', '1.234,5', '118,000', '1,250', '1,000,000'])('leaves %j as it stands', (text) => expect(figureTyped(text)).toBe(text));
  it('is held in newtons where kilonewtons are typed, and shown as it was typed', () => {
    expect(inUnit(690.1, 1000)).toBe(690_100);
    expect(inUnit(690_100, 1 / 1000)).toBe(690.1);
    expect(inUnit('abc', 1000)).toBe('abc');
  });
  it('says of a comma before three figures what it may mean', () => {
    expect(twoReadings('118,000')).toBe('118,000 may mean 118000 or, with a decimal comma, 118.000: write the one that is meant, without a comma.');
    expect(twoReadings('0,125')).toBeUndefined();
    expect(twoReadings('118000')).toBeUndefined();
  });
});

describe('a sentence of the parser in the words of the form', () => {
  it('names the label in place of the field', () => {
    expect(faultWords('profile.bodyWidth', 'profile.bodyWidth must be a number from 0.1 to 500 mm (0 was given).', 'Width of the body, mm')).toBe('Width of the body must be a number from 0.1 to 500 mm (0 was given).');
    expect(faultWords('shutHeight', 'shutHeight (900) must be less than openHeight (480).', 'Shut height, mm')).toBe('Shut height (900) must be less than open height (480).');
  });
  it('gives limits in the unit of the label', () => {
    expect(faultWords('rating', 'rating must be a number from 10000 to 50000000 N (5000 was given).', 'Rating, kN', 1000)).toBe('Rating must be a number from 10 to 50000 kN (5 was given).');
    expect(faultWords('rating', 'rating must be a number from 10000 to 50000000 N (abc was given).', 'Rating, kN', 1000)).toBe('Rating must be a number from 10 to 50000 kN (abc was given).');
    expect(faultWords('rating', 'rating must be a number from 10 to 20000 N/mm (5 was given).', 'Rating, N/mm')).toBe('Rating must be a number from 10 to 20000 N/mm (5 was given).');
  });
  it('speaks the place where there is no label', () =>
    expect(faultWords('gauge.finger.faces.0', "gauge.finger.faces.0 (nose) must lie on an upright edge of the finger's profile.")).toBe("gauge, finger, faces, number 1 (nose) must lie on an upright edge of the finger's profile."));
});

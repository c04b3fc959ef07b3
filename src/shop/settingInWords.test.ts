import { expect, it } from 'vitest';
import type { SeatFit } from './seatFit.js';
import { nothingSet, placeInWords, settingInWords } from './settingInWords.js';

const fit = (tilt: number, crowning: number): SeatFit => ({ asIs: 0.1, left: 0.05, tilt, crowning }) as SeatFit;
const both = { tilt: true, crowning: true };

it('what is set is told with its figures, and what would be written as 0.000 is not', () => {
  expect(settingInWords({ corrected: fit(0.04, 0.02), works: both })).toBe('a tilt of 0.040 mm over 1,000 mm, the ram lower to the right, and a crowning of 0.020 mm');
  expect(settingInWords({ corrected: fit(-0.04, 0), works: both })).toBe('a tilt of 0.040 mm over 1,000 mm, the ram lower to the left');
  expect(settingInWords({ corrected: fit(0.0001, 0.02), works: both })).toBe('a crowning of 0.020 mm');
  expect(settingInWords({ corrected: fit(0, 0), works: both })).toBeNull();
  expect(nothingSet({ works: both })).toBe('no setting of tilt and crowning lessens it');
  expect(nothingSet({ works: { tilt: true, crowning: false } })).toBe('no setting of the tilt lessens it');
  expect(nothingSet({ works: { tilt: false, crowning: false } })).toMatch(/^neither tilt nor crowning is there/);
});

it('a place is named only where it is better than the middle', () => {
  const elsewhere = { window: [-1250, -250] as const, fit: fit(0, 0) };
  expect(placeInWords({ elsewhere, avoided: 0.1 })).toBe('from -1250 to -250 mm: standing there avoids 0.100 mm of it');
  expect(placeInWords({ elsewhere, avoided: 0.0002 })).toBe('no place is better than the middle');
  expect(placeInWords({ elsewhere, avoided: null })).toBe('from -1250 to -250 mm; the middle was not all measured');
  expect(placeInWords({ elsewhere: null, avoided: null })).toBeNull();
});

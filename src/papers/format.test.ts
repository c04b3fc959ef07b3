import { expect, it } from 'vitest';
import { angleFigure, fineFigure, forceText, lengthFigure, roundFigure } from './format.js';
import { textWidth } from './textWidth.js';

it('shows lengths in mm and inches, a true minus, no minus nought', () => {
  expect(lengthFigure(38.649, 'mm')).toBe('38.65');
  expect(lengthFigure(25.4, 'in')).toBe('1.000');
  expect(fineFigure(4.62, 'in')).toBe('0.1819');
  expect(roundFigure(-100, 'mm')).toBe('−100');
  expect(roundFigure(12.34, 'mm')).toBe('12.3');
  expect(lengthFigure(-0.001, 'mm')).toBe('0.00');
  expect(roundFigure(-0.01, 'mm')).toBe('0');
  expect(angleFigure(88.64)).toBe('88.6°');
});

it('shows force in kN, and in short tons of 2000 lbf beside it where inches are shown', () => {
  expect(forceText(21_400, 'mm')).toBe('21.4 kN');
  // 2000 lbf x 4.4482216 N
  expect(forceText(8896.443, 'in')).toBe('8.9 kN (1.0 US ton)');
});

it('knows how wide letters are: figures are 0.572 of the em in the condensed face', () => {
  expect(textWidth('100', 10)).toBeCloseTo(3 * 5.72, 9);
  expect(textWidth('1 − 1', 10)).toBeCloseTo(2 * 5.72 + 2 * 2.86 + 7.54, 9);
});

import { expect, it } from 'vitest';
import { marginAmounts } from './reportWords.js';

it('small amounts keep their digits in both units', () => {
  const margin = { kind: 'tolerance' as const, name: 'd1', value: 0.1, limit: 0.2, unit: 'mm', share: 0.5, step: 0, source: '' };
  expect(marginAmounts(margin, 'mm')).toBe('0.10 mm of 0.20 mm');
  // by hand: 0.1 / 25.4 = 0.0039, 0.2 / 25.4 = 0.0079
  expect(marginAmounts(margin, 'in')).toBe('0.004 in of 0.008 in');
  expect(marginAmounts({ ...margin, kind: 'length', value: 1250, limit: 3000 }, 'in')).toBe('49.21 in of 118.11 in');
});

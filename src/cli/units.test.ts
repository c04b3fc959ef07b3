import { expect, it } from 'vitest';
import { show } from './units.js';

it('lengths in words are shown in inches, to a digit more; rates, areas and names stay', () => {
  const { words } = show('in');
  // by hand: 1,000 / 25.4 = 39.37, 40 / 25.4 = 1.57, 60 / 25.4 = 2.36, 0.05 / 25.4 = 0.002
  expect(words('It is 1,000 mm long, of 40 x 60 mm, plus and minus 0.05 mm.')).toBe('It is 39.37 in long, of 1.57 x 2.36 in, plus and minus 0.002 in.');
  expect(words('from -40 to 60 mm; 200 by 150 mm')).toBe('from -1.57 to 2.36 in; 7.87 by 5.91 in');
  expect(words('640 N/mm at 10 mm/s, 12 mm2, bend b2, step 3')).toBe('640 N/mm at 10 mm/s, 12 mm2, bend b2, step 3');
  // 30 / 25.4 = 1.181, 0.5 / 25.4 = 0.020, 4 / 25.4 = 0.16, 16 / 25.4 = 0.63
  expect(words('Dimension d5 (30.00 mm ± 0.50) scatters by 0.65 mm.')).toBe('Dimension d5 (1.181 in ± 0.020) scatters by 0.026 in.');
  expect(words('30.00 mm ± 0.50 mm, 90.0° ± 0.5')).toBe('1.181 in ± 0.020 in, 90.0° ± 0.5');
  expect(words('no V die between 4 and 16 mm; steps 2 and 16 mm')).toBe('no V die between 0.16 and 0.63 in; steps 2 and 0.63 in');
  expect(show('mm').words('40 mm')).toBe('40 mm');
});

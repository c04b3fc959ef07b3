import { expect, it } from 'vitest';
import { toldTogether } from './toldTogether.js';

it('says once what holds for several bends, each sentence where it stood first', () => {
  expect(toldTogether([
    'Bend a forms an inside radius of 1.38 mm where 0.74 mm is drawn.', 'The batch is not known.', 'Bend b forms an inside radius of 1.38 mm where 0.74 mm is drawn.',
    'Bend c forms an inside radius of 2.00 mm where 0.74 mm is drawn.', 'Bend d forms an inside radius of 1.38 mm where 0.74 mm is drawn.', 'The batch is not known.',
  ])).toEqual([
    'Bends a, b and d form an inside radius of 1.38 mm where 0.74 mm is drawn.', 'The batch is not known.', 'Bend c forms an inside radius of 2.00 mm where 0.74 mm is drawn.',
  ]);
});

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

it('says of other things each, and of one bend alone what was said', () => {
  expect(toldTogether(['Bend b1 is near a hole.', 'Bend b2 is near a hole.', 'Bend b3 is wide.', 'Bend lines cross.'])).toEqual(['Bends b1 and b2: each is near a hole.', 'Bend b3 is wide.', 'Bend lines cross.']);
});

import { expect, it } from 'vitest';
import { exitCodeOf } from './exitCode.js';

it('0 where each part is made as it stands somewhere, 3 where one is not, 4 where that is still open', () => {
  expect(exitCodeOf([['makes', 'does not make'], ['not decided', 'makes']])).toBe(0);
  // a remedy is another machine, an option, a tool or another drawing: not as it stands
  expect(exitCodeOf([['makes with remedy', 'does not make']])).toBe(3);
  // one machine undecided and the rest say no: the undecided one may make it
  expect(exitCodeOf([['does not make', 'not decided', 'makes with remedy']])).toBe(4);
  expect(exitCodeOf([['not tried']])).toBe(4);
  // one part is made nowhere, whatever becomes of the other
  expect(exitCodeOf([['does not make', 'does not make'], ['not decided', 'does not make']])).toBe(3);
  // a body that no brake bends
  expect(exitCodeOf([['makes'], []])).toBe(3);
});

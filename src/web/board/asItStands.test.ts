import { expect, it } from 'vitest';
import { asItStands } from './asItStands.js';

it('the board of a part shows neither an option fitted, nor what the buyer has, nor what is not known', () => {
  const plain = { whose: 'ours', option: null } as const;
  expect(asItStands([{ whose: 'ours', option: 'powered R' }, { whose: 'ours, with the buyer\'s tools', option: null }, { whose: 'the buyer\'s', option: null }, { whose: null, option: null }, plain])).toEqual([plain]);
});

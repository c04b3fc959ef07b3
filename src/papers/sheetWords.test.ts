import { expect, it } from 'vitest';
import { channelTrial } from './fixture.js';
import { timeInWords } from './sheetWords.js';

it('says no minute of 60 seconds', () => {
  const said = (seconds: number): string => timeInWords({ ...channelTrial(), seconds })[0]!.split(' for ')[0]!;
  expect([41, 99.4, 99.7, 119.7, 125].map(said)).toEqual(['41 s', '99 s', '1 min 40 s', '2 min 0 s', '2 min 5 s']);
});

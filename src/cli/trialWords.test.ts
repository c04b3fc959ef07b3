import { describe, expect, it } from 'vitest';
import { fitCell } from '../fit/fitCell.js';
import { channelTrial } from '../papers/fixture.js';
import type { Trial } from '../trial/index.js';
import { boardInWords, summaryOf, trialInWords } from './trialWords.js';

const good = channelTrial();
/** As the worst sheet or the proof leave a plan that does not hold: its steps stay in the record. */
const refused: Trial = { ...good, verdict: 'does not make', reasons: [{ code: 'force', sentence: 'The thickest sheet asks too much.', bends: ['b1'] }] };

describe('a plan that is not to be bent', () => {
  it('is not told as one on the command line', () => {
    expect(trialInWords(good, 'mm')).toMatch(/X axis mm/);
    const told = trialInWords(refused, 'mm');
    expect(told).toContain('A plan of 2 steps was worked out, but is not shown to hold, for the reason above: it is not to be bent');
    expect(told).not.toMatch(/X axis|making time|Tightest/);
    expect(boardInWords([summaryOf(good)], 'mm')).toContain('41.0');
    expect(boardInWords([summaryOf(refused)], 'mm')).not.toContain('41.0');
  });

  it('has no pace on a board', () => {
    expect(fitCell(good)).toMatchObject({ seconds: 41, changeOver: 750 });
    expect(fitCell(refused)).toMatchObject({ seconds: null, partsAnHour: null, changeOver: null });
  });
});

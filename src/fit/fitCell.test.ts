import { expect, it } from 'vitest';
import { channelTrial } from '../papers/fixture.js';
import { SET_BY_HAND } from '../trial/index.js';
import { fitCell } from './fitCell.js';

const base = channelTrial();
/** The channel as if a part took so many s, by hand, beside seat and stroke. */
const slowed = (bySteps: number, byHand: number) => fitCell({
  ...base, quantity: 10, seconds: 2 + 10 + bySteps + byHand + 60,
  steps: [{ ...base.steps[0]!, time: [{ what: 'ram', seconds: 2 }, { what: 'bring the sheet to its stop', seconds: 10 }, { what: 'turn the sheet', seconds: bySteps }] }],
  timeModel: [{ what: 'step 1, bend b1', seconds: 12 + bySteps }, ...(byHand > 0 ? [{ what: SET_BY_HAND, seconds: byHand }] : []), { what: 'set-up of 1 station and the batch, shared by 10', seconds: 60 }],
});

it('tells the pace without the set-up, and what beside bending takes a third of a part’s making or more', () => {
  // 12 s of seat and stroke: 6 are a third of 18, 5 are less
  expect(slowed(6, 0)).toMatchObject({ partsAnHour: 200, changeOver: 600, slowedBy: { what: 'turn the sheet', seconds: 6 } });
  expect(slowed(5, 0)).not.toHaveProperty('slowedBy');
  expect(slowed(6, 12)).toMatchObject({ partsAnHour: 120, slowedBy: { what: SET_BY_HAND, seconds: 12 } });
  expect(slowed(0, 0)).not.toHaveProperty('slowedBy');
});

import { describe, expect, it } from 'vitest';
import { STOP_X, channelTrial } from '../papers/fixture.js';
import type { Step } from '../trial/index.js';
import { scribedLine } from './scribedLine.js';

const trial = channelTrial();
const byEye = (step: Step): Step => ({ ...step, stop: { ...step.stop, kind: 'none' } });

describe('the line of a stroke that is placed by eye', () => {
  it('lies from the nearest edge where a stop would hold that edge behind the bending plane', () => {
    expect(trial.steps.map((step) => scribedLine(trial, byEye(step)))).toEqual([
      { distance: expect.closeTo(STOP_X, 6) as unknown, from: 'edge of the flange beyond b1' }, { distance: expect.closeTo(STOP_X, 6) as unknown, from: 'edge of the flange beyond b2' },
    ]);
  });
  it('is none where fingers hold the sheet or the bend begun lies in the V', () => {
    expect(scribedLine(trial, trial.steps[0]!)).toBeNull();
    expect(scribedLine(trial, { ...byEye(trial.steps[0]!), pass: 2 })).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import { channelTrial } from '../papers/fixture.js';
import type { Axis } from '../shop/index.js';
import { fitMargins } from './fitMargins.js';

const base = channelTrial();
const [first] = base.steps;
/** The trial's first step alone, at this place of X on an axis of this travel; R fixed, so that X is the only travel. */
const gaugeAt = (at: number, min: number, max: number) => {
  const x: Axis = { drive: 'powered', min, max, speed: 200 };
  const { stop } = first!;
  if (stop.kind === 'none') throw new Error('the fixture has a stop');
  const machine = { ...base.machine, gauge: { ...base.machine.gauge, x, r: { drive: 'fixed' as const, at: 0 } } };
  return fitMargins({ ...base, machine, steps: [{ ...first!, stop: { ...stop, axisX: at } }] }).find(({ kind }) => kind === 'gauge travel');
};

describe('gauge travel', () => {
  // by hand: 4 of 14, 600 of 650, 10 of 20
  it.each([[14, 4, 650, 'X, nearest', 4, 4 / 14], [600, 4, 650, 'X, furthest', 650, 600 / 650], [20, 10, 650, 'X, nearest', 10, 0.5]] as const)('X at %d mm of %d to %d', (at, min, max, name, limit, share) => {
    expect(gaugeAt(at, min, max)).toMatchObject({ name, value: at, limit });
    expect(gaugeAt(at, min, max)!.share).toBeCloseTo(share, 12);
  });

  it('at an end all of it is used, and a near end of nought or less takes nothing of a place in front of it', () => {
    expect(gaugeAt(5, 5, 650)!.share).toBe(1);
    expect(gaugeAt(650, 5, 650)!.share).toBe(1);
    expect(gaugeAt(65, -20, 650)).toMatchObject({ name: 'X, furthest', share: 0.1 });
    expect(gaugeAt(-20, -20, 650)).toMatchObject({ name: 'X, nearest', share: 1 });
  });
});

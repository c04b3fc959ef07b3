import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { profilePart } from '../sheet/index.js';
import { type Die, type Machine, demoFloor, demoRack } from '../shop/index.js';
import { DAYLIGHT } from './leastOpening.js';
import { planTrial } from './planTrial.js';
import type { Step, Trial } from './trial.js';

const [THICKNESS, BASE, LEG] = [2, 120, 60];
const general = demoFloor().find((m) => m.id === 'general')!;

/** A channel, the leg of b1 first, then b2 with the base and the leg on it towards the gauge. */
const channelOn = (machine: Machine): Trial => {
  const made = profilePart({ name: 'channel', thickness: THICKNESS, insideRadius: 2, width: 100, flanges: [LEG, BASE, LEG], turns: [90, 90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  const leg = made.value.bends[1]!.sides.find((s) => !made.value.bends[0]!.sides.some((other) => other.plate === s.plate))!.plate;
  return planTrial({
    part: made.value, machine, rack: demoRack(), metal: metalById('dc01')!, quantity: 1,
    wishes: { keepOrder: ['b1', 'b2'], forbid: [{ bend: 'b2', plateToGauge: leg }] },
  });
};

const daylight = (step: Step): { readonly value: number; readonly limit: number } => step.margins.find((m) => m.name === DAYLIGHT)!;

/**
 * By hand, mm: the bend is made, both wings stand at 45 degrees, each outer face along the shoulder's arc (radius rs, its middle at h
 * beside and rs below the die top). The outer faces meet at rs (sqrt 2 - 1) - h over the die top; the leg's far corner stands
 * (base + leg) / sqrt 2 over that. Lifted out and drawn to the front it passes under the tip with 1 mm of clearance.
 */
const byHand = (die: Die, step: Step): number => {
  const [lift, draw] = step.wayOut;
  if (lift?.kind !== 'shift' || draw?.kind !== 'shift' || step.wayOut.length !== 2) throw new Error('not drawn straight out to the front');
  const h = die.v / 2 + die.shoulderRadius * Math.tan(((90 - die.includedAngle / 2) / 2) * (Math.PI / 180));
  return die.shoulderRadius * (Math.SQRT2 - 1) - h + (BASE + LEG) / Math.SQRT2 + lift.by[2] + 1;
};

describe('what a step needs of the opening', () => {
  const trial = channelOn(general);
  const last = trial.steps[1]!;
  const needed = byHand(trial.dies.find((d) => d.id === last.die)!, last);

  it('is what the standing leg of a channel asks on its way out, by hand geometry, and no height that was tried', () => {
    expect(last.bends).toEqual(['b2']);
    expect(Math.abs(daylight(last).value - needed)).toBeLessThan(0.2);
    expect(daylight(last).value).toBeLessThanOrEqual(last.ramOpeningOut);
  });

  it('is the machine’s to leave: the same need on a machine that opens further, and on one that opens just so far', () => {
    const stack = general.openHeight - daylight(last).limit;
    for (const openHeight of [general.openHeight + 100, stack + needed + 0.3]) {
      const there = channelOn({ ...general, openHeight });
      expect(there.verdict).toBe('makes');
      expect(there.steps[1]!.wayOut).toEqual(last.wayOut);
      expect(Math.abs(daylight(there.steps[1]!).value - needed)).toBeLessThan(0.2);
      expect(daylight(there.steps[1]!).limit).toBeCloseTo(openHeight - stack, 9);
    }
    // a little lower, and it must leave another way or by other tools
    const lower = channelOn({ ...general, openHeight: stack + needed - 0.5 });
    expect(lower.verdict).toBe('makes');
    const other = lower.steps[1]!;
    expect([other.punch, other.die, other.wayOut]).not.toEqual([last.punch, last.die, last.wayOut]);
  });
});

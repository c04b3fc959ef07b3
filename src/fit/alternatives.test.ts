import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { alternatives } from './alternatives.js';
import { planAndProve } from './planAndProve.js';

const channel = profilePart({ name: 'channel', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [30, 80, 40], turns: [90, 90] });
if (!channel.ok) throw new Error(channel.failure.sentence);
const input = { part: channel.value, machine: demoFloor()[0]!, rack: demoRack(), metal: metalById('dc01')!, quantity: 10 };

describe('other ways to make a channel', () => {
  it('each differs from the best in what it says, is proven by replay, and is no quicker', async () => {
    const best = await planAndProve(input);
    const others = await alternatives(input, best, 3);
    expect(others.length).toBeGreaterThan(1);
    const mores = others.map((o) => o.more);
    expect(mores).toEqual([...mores].sort((a, b) => a - b));
    for (const { without, trial, more } of others) {
      expect(trial.proof.passed, without).toBe(true);
      expect(more, without).toBeGreaterThan(-1e-6);
      const punch = best.punches.find((p) => without === `without ${p.name}`);
      if (punch) expect(trial.punches.map((p) => p.id)).not.toContain(punch.id);
      if (without.startsWith('not beginning')) expect(trial.steps[0]!.bends).not.toEqual(best.steps[0]!.bends);
    }
  }, 180_000);
});

import { beforeAll, describe, expect, it } from 'vitest';
import { benchParts } from '../bench/parts.js';
import { metalById } from '../src/metal/index.js';
import { proveTrial } from '../src/proof/index.js';
import { type Rack, demoFloor, demoRack } from '../src/shop/index.js';
import { type Trial, planTrial } from '../src/trial/index.js';
import { moved, raised, stopLeft, swapped } from './proof/damage.js';

// Plans of the planner itself, each with one thing spoilt: the check must reject it and name the thing. P8's are in ears.test.ts.

const whole = demoRack();
const rack: Rack = { ...whole, dies: whole.dies.filter((d) => d.v === 12), punches: whole.punches.filter((p) => ['straight-r1', 'gooseneck'].includes(p.id)) };
const plan = (id: string): Trial =>
  planTrial({ part: benchParts().find((b) => b.id === id)!.part, machine: demoFloor().find((m) => m.id === 'general')!, rack, metal: metalById('dc01')!, quantity: 50 });
const findings = async (trial: Trial, ...steps: number[]): Promise<string> => {
  const proof = await proveTrial(trial, { steps });
  expect(proof.passed).toBe(false);
  return proof.findings.join('\n');
};

describe('P5, a channel 100 wide with legs of 50 and lips of 15 inward', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = plan('P5');
    expect((await proveTrial(trial)).findings).toEqual([]);
    // one side's lip and leg, then the other's: which is first is a matter of the channel's symmetry
    expect([['b1', 'b2', 'b4', 'b3'], ['b4', 'b3', 'b1', 'b2']]).toContainEqual(trial.steps.map((s) => s.bends[0]));
  });

  it('lip after leg: the edge that the stop is written for is not there, and the closed channel is in the tools', async () => {
    const found = await findings(swapped(trial, 1), 1, 2);
    expect(found).toMatch(/Step 2: the finger at [-\d.]+ mm along the bed meets no metal of back edge of the (base|flange beyond b4)/);
    expect(found).toMatch(/Step 2, way in, move 1: the flange beyond b[123] runs into the punch of station S1/);
  });

  it('the die 2 mm higher than die and riser make', async () => {
    expect(await findings(raised(trial, 'S1', 2, 0), 1)).toBe('Station S1: the die top is written as 92.0 mm over the die seat; die and riser make 90.0 mm.');
  });

  it('the die on a riser of 20 mm, the gauge left low: it stands below the sheet', async () => {
    expect(await findings({ ...raised(trial, 'S1', 20, 20), risers: rack.risers }, 1)).toMatch(/Step 1: the finger at [-\d.]+ mm along the bed meets no metal of back edge/);
  });

  it('the fingers left where the step before had them: 35 mm inside the leg', async () => {
    // lip 15 and leg 50, outside lengths at the same bend deduction: the stop's face stands 50 - 15 = 35 further back for the leg
    const [before, here] = [trial.steps[2]!, trial.steps[3]!];
    expect(here.stop.x - before.stop.x).toBeCloseTo(35, 1);
    const found = await findings(stopLeft(trial, 3), 4);
    expect(found).toMatch(/Step 4: .*finger at [-\d.]+ mm/);
    expect(found).toMatch(/runs into the left finger/);
  });
});

describe('P7, a tray 200 x 150 with flanges of 30', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = plan('P7');
    expect((await proveTrial(trial)).findings).toEqual([]);
    expect(trial.steps.slice(0, 2).map((s) => s.bends[0]).sort()).toEqual(['b2', 'b4']);
  });

  it('the tray moved until a flange stands 1 mm in the punch', async () => {
    // between the standing flanges 200 - 2 x 1.5 = 197; the punch is 190 long and stands in the middle: 3.5 at either end
    const { punchSegments } = trial.stations[0]!;
    expect(punchSegments.reduce((sum, p) => sum + p.length, 0)).toBe(190);
    expect(await findings(moved(trial, 2, -4.5), 3)).toMatch(/Step 3, close: the flange beyond b[24] runs into the punch of station S1; they share a space of 1\.00 x/);
    expect(await findings(moved(trial, 2, -3), 3)).toMatch(/the flange beyond b[24] comes within 0\.50 mm of the punch of station S1; 1 mm is asked\./);
  });

  it('the long side second: the punch of 190 does not fit between the flanges of the short one', async () => {
    // 150 - 3 = 147 between flanges that then stand
    expect(await findings(swapped(trial, 2), 2, 3)).toMatch(/Step 3, .*: the flange beyond b[13] runs into the punch of station S1/);
  });

  it('the die 2 mm higher than die and riser make', async () => {
    expect(await findings(raised(trial, 'S1', 2, 0), 1)).toContain('the die top is written as 92.0 mm over the die seat; die and riser make 90.0 mm');
  });

  it('the fingers left where the step before had them: in the base', async () => {
    // the first step whose stop stands a base's width further back than the one before: the base then covers where the fingers were
    const k = trial.steps.findIndex((s, i) => i > 0 && s.stop.x - trial.steps[i - 1]!.stop.x > 100);
    const found = await findings(stopLeft(trial, k), k + 1);
    expect(found).toMatch(new RegExp(`Step ${k + 1}, way in, .*: the base runs into the left finger`));
  });
});

import { expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { metalById } from '../metal/index.js';
import { proveTrial } from '../proof/index.js';
import { profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { type Trial, planTrial } from './index.js';

// P1's angle is 100 mm long: two fingers of 40 mm would stand 60 apart at the most and need 70, so one stands in the bend's middle.

const general = demoFloor().find((m) => m.id === 'general')!;
const planned = (min: number, max: number): Trial =>
  planTrial({
    part: benchParts()[0]!.part, rack: demoRack(), metal: metalById('dc01')!, quantity: 10,
    machine: { ...general, gauge: { ...general.gauge, z: { drive: 'by hand', min, max, seconds: 12 } } },
  });

it('a gauge whose fingers only go right of the bed\'s middle has the station moved to them, and the check passes', async () => {
  const trial = planned(200, 1400);
  expect(trial.verdict).toBe('makes');
  const { z } = trial.steps[0]!.stop;
  expect(z).toHaveLength(1);
  expect(z[0]).toBeGreaterThanOrEqual(200);
  expect((await proveTrial(trial)).findings).toEqual([]);
});

it('fingers that no place of the station brings within their Z are told, with its reach', () => {
  // the bed ends 1,500 from its middle, so no finger of a station on it stands 1,600 from there
  const trial = planned(1600, 1700);
  expect(trial.verdict).toBe('not decided');
  expect(trial.reasons[0]).toMatchObject({ code: 'no stop', sentence: expect.stringContaining('its Z, which reaches from 1600 to 1700 mm') });
});

it.each([['small-fast', 1200], ['small-fast', 1240], ['general', 2990]] as const)('on %s an angle of %i mm, longer than its Z, stands against two fingers within their Z', async (id, width) => {
  const machine = demoFloor().find((m) => m.id === id)!;
  const { z } = machine.gauge;
  if (z.drive === 'fixed') throw new Error(`${id} has a fixed Z`);
  const part = profilePart({ name: 'long angle', thickness: 1, insideRadius: 1, width, flanges: [60, 80], turns: [90] });
  if (!part.ok) throw new Error(part.failure.sentence);
  const trial = planTrial({ part: part.value, rack: demoRack(), metal: metalById('dc01')!, quantity: 10, machine });
  expect(trial.verdict, trial.reasons[0]?.sentence).toBe('makes');
  const [left, right] = trial.steps[0]!.stop.z;
  expect(left).toBeGreaterThanOrEqual(z.min);
  expect(right).toBeLessThanOrEqual(z.max);
  // 40 mm of Z are left over by the widest stance (common practice, no source), as the part is longer than Z by more than the fingers' width
  expect(right! - left!).toBeCloseTo(z.max - z.min - 40, 6);
  expect((await proveTrial(trial)).findings).toEqual([]);
});

import { expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { metalById } from '../metal/index.js';
import { proveTrial } from '../proof/index.js';
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

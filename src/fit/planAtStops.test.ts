import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { type Rack, demoFloor, demoRack } from '../shop/index.js';
import { profilePart } from '../sheet/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { planAndProve } from './planAndProve.js';
import { planAtStops, strokesByEye } from './planAtStops.js';

const all = demoRack();
/** Few tools, so that a plan is found at once. */
const rack = (v: number): Rack => ({ ...all, punches: all.punches.filter(({ id }) => id === 'straight-r1' || id === 'straight-r3'), dies: all.dies.filter((d) => d.v === v) });

const asked = (v: number, thickness: number, flanges: number[], machineId: string): TrialInput => {
  const made = profilePart({ name: 'angle', thickness, insideRadius: thickness, width: 200, flanges, turns: [90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  return { part: made.value, machine: demoFloor().find(({ id }) => id === machineId)!, rack: rack(v), metal: metalById('dc01')!, quantity: 20 };
};
const planned: Trial[] = [];
const onPlanned = (trial: Trial): void => { planned.push(trial); };

describe('a trial', () => {
  it('is planned with every stroke at a stop, and no more where that makes the part', async () => {
    planned.length = 0;
    const trial = await planAtStops(asked(12, 1.5, [40, 60], 'general'), { onPlanned });
    expect([trial.verdict, strokesByEye(trial), planned.length]).toEqual(['makes', 0, 1]);
    expect(trial.model).toMatch(/each at a stop of the gauge/);
  });

  it('is placed by eye to a scribed line only where no order has every stroke at a stop', async () => {
    planned.length = 0;
    // 12 mm in V 63 stands over the fixed R of the long machine (src/fit/remedies.test.ts)
    const input = asked(63, 12, [90, 120], 'long-fixed-r');
    const trial = await planAtStops(input, { onPlanned });
    expect(planned.map(({ verdict }) => verdict)).toEqual(['does not make', 'makes']);
    expect([trial.verdict, strokesByEye(trial)]).toEqual(['makes', 1]);
    expect(trial.seconds).toBeCloseTo((await planAndProve(input)).seconds, 6);
  });

  it('of a part that no line would help is planned once', async () => {
    planned.length = 0;
    const trial = await planAtStops({ ...asked(12, 1.5, [40, 60], 'general'), rack: { ...all, dies: [] } }, { onPlanned });
    expect([trial.verdict, planned.length]).toEqual(['does not make', 1]);
  });
});

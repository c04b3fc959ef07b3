import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { proveTrial } from '../proof/index.js';
import { type Part, type Sketch, grow, partOf, polygon } from '../sheet/index.js';
import { type Machine, demoFloor, demoRack, withOptions } from '../shop/index.js';
import { createDeviations } from './deviations.js';
import { planTrial } from './planTrial.js';
import type { Searched, Stop, Trial, TrialInput } from './index.js';

/*
 * An angle 300 wide whose every long edge runs at a slant: the base is 100 deep at one end and 130 at the other (30 over 300: 0.1 mm for
 * each mm along), the flange 40 and 55 (0.05). No edge is square to the bend, so fingers on one X axis have nothing to stand against.
 */
const [BASE, FLANGE] = [30 / 300, 15 / 300];
const tapered = (): Part => {
  const sketch: Sketch = { plates: [{ outline: polygon([[0, 0], [300, 0], [300, 130], [0, 100]]), holes: [] }], bends: [] };
  grow(sketch, 0, { from: [0, 0], to: [300, 0] }, 90, 1.5, polygon([[0, 0], [300, 0], [300, 40], [0, 55]]));
  return partOf('tapered angle', 1.5, sketch, 'Typed for this test.');
};
const plain = demoFloor().find((m) => m.id === 'deep-throat')!;
const metal = metalById('dc01')!;
const input = (machine: Machine): TrialInput => ({ part: tapered(), machine, rack: demoRack(), metal, quantity: 50 });
const planOn = (machine: Machine): Trial => planTrial(input(machine), {});

describe('a tapered edge at the back gauge', () => {
  const own = withOptions(plain, ['own X']);
  const trial = planOn(own);
  const stop = trial.steps[0]!.stop;
  const width = own.gauge.finger.width;

  it('is set by a scribed line where the fingers share one X axis', () => {
    const { verdict, steps } = planOn(plain);
    expect(verdict).toBe('makes');
    expect(steps[0]!.stop.kind).toBe('none');
  });

  it('is met by two fingers where each has an X axis of its own; by hand the right one stands further back by taper times stance', () => {
    expect(trial.verdict).toBe('makes');
    expect(stop.kind).toBe('edge');
    const stance = stop.z[1]! - stop.z[0]!;
    expect(stance).toBeCloseTo(300 - width, 6);
    const taper = stop.plate === 0 ? BASE : FLANGE;
    expect(Math.abs(stop.skew!)).toBeCloseTo(taper * stance, 6);
  });

  it('passes the independent check, which finds a wrong skew, shared axes and more than the axes can differ', async () => {
    expect((await proveTrial(trial)).findings).toEqual([]);
    const spoilt = async (change: Partial<Stop>, machine: Machine = own): Promise<string> => {
      const { findings } = await proveTrial({ ...trial, machine, steps: trial.steps.map((s) => ({ ...s, stop: { ...s.stop, ...change } })) });
      return findings.join(' ');
    };
    expect(await spoilt({ skew: stop.skew! + 1 })).toMatch(/the stop is written at X .* the metal ends at/);
    expect(await spoilt({}, plain)).toContain('they share one X axis');
    expect(await spoilt({}, { ...own, gauge: { ...own.gauge, ownX: { most: 5 } } })).toContain('they may differ by 5.00 mm');
  });

  it("the sheet's place along the bed moves the bend line by the taper, and each X axis has an error of its own", () => {
    let searched: Searched | null = null;
    planTrial(input(own), { onSearch: (s) => (searched = s) });
    const { tooling, result } = searched! as Searched;
    if (result.kind !== 'plan') throw new Error('no plan');
    const shift = createDeviations(tooling, own, metal).place(new Map(), result.plan[0]!.option).get(0)!.shift;
    // 0.5 mm by eye along the bed
    expect(Math.abs(shift.get('sideways|b1')!)).toBeCloseTo(0.5 * (stop.plate === 0 ? BASE : FLANGE), 6);
    expect([...shift.keys()]).toEqual(expect.arrayContaining(['x|b1, finger 1', 'x|b1, finger 2']));
  });
});

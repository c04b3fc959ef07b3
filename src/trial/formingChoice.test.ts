import { expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { type Part, partFromLine, tabPlate } from '../sheet/index.js';
import { type Machine, type Rack, demoFloor, demoRack } from '../shop/index.js';
import { planTrial } from './planTrial.js';

const general = demoFloor().find((m) => m.id === 'general')!;
const rack = (punches: readonly string[], vs: readonly number[]): Rack =>
  ({ ...demoRack(), punches: demoRack().punches.filter(({ id }) => punches.includes(id)), dies: demoRack().dies.filter(({ v, shape }) => shape === 'V' && vs.includes(v)) });
const part = (line: string): Part => {
  const made = partFromLine(line, 'channel');
  if (!made.ok) throw new Error(made.fault.sentence);
  return made.value;
};

it('where the tip nearest to the drawing has straight punches alone, a relieved one of another tip makes the channel', () => {
  // r6 is drawn: the straight punch of r3 comes nearest, and the standing leg of 60 over a web of 42 meets it as it meets any straight punch
  const plan = (punches: readonly string[]) =>
    planTrial({ part: part('60 ^90 42 ^90 60 t3 w200 r6'), machine: general, rack: rack(punches, [24]), metal: metalById('s355jr')!, quantity: 20 });
  expect(plan(['straight-r3']).verdict).toBe('does not make');
  const both = plan(['straight-r3', 'gooseneck-deep']);
  expect([both.verdict, ...both.steps.map(({ punch }) => punch)]).toEqual(['makes', 'gooseneck-deep', 'gooseneck-deep']);
  // no need of it, no change: the angle keeps the nearest tip
  expect(planTrial({ part: part('60 ^90 42 t3 w200 r6'), machine: general, rack: rack(['straight-r3', 'gooseneck-deep'], [24]), metal: metalById('s355jr')!, quantity: 20 }).steps[0]!.punch).toBe('straight-r3');
});

it('bends in line that together ask more than the machine has are bent one by one, those that do not in one stroke', () => {
  const made = tabPlate({ name: 'two tabs', thickness: 4, insideRadius: 4, base: [700, 150], rows: [{ count: 2, width: 300, length: 40, turn: 90 }, undefined, undefined, undefined] });
  if (!made.ok) throw new Error(made.failure.sentence);
  const plan = (rating: number, vs = [32]) => {
    const machine: Machine = { ...general, rating };
    return planTrial({ part: made.value, machine, rack: rack(['straight-r3'], vs), metal: metalById('s355jr')!, quantity: 20 });
  };
  const together = plan(general.rating);
  expect(together.steps.map(({ bends }) => bends.length)).toEqual([2]);
  const { force } = together.steps[0]!;
  const apart = plan(0.6 * force);
  expect(apart.verdict).toBe('makes');
  expect(apart.steps.map(({ bends }) => bends.length)).toEqual([1, 1]);
  for (const step of apart.steps) expect(step.force).toBeCloseTo(force / 2, 6);
  // by itself too each of them asks more
  const none = plan(0.4 * force);
  expect([none.verdict, none.reasons[0]!.code]).toEqual(['does not make', 'force']);
});

it('of two bends alike the one that is made in two passes has a forming of its own', () => {
  const input = { part: part('40 ^90 60 ^90 40 t1.5 w100 r1.5'), machine: general, rack: rack(['straight-r1'], [12]), metal: metalById('dc01')!, quantity: 20 };
  const trial = planTrial({ ...input, inTwo: [{ bend: 'b2', first: 45 }] });
  expect([trial.verdict, trial.steps.map(({ bends, pass }) => `${bends.join()} ${pass ?? ''}`.trim()).sort()]).toEqual(['makes', ['b1', 'b2 1', 'b2 2']]);
});

import { expect, it } from 'vitest';
import { demoShopData } from './index.js';
import { parseCondition } from './parseCondition.js';
import { parseFloor } from './parseFloor.js';
import { CRACKED, standsStill } from './standsStill.js';
import { withCondition } from './withCondition.js';

it('an overhaul after which the throat and the force were not looked at again mends neither', () => {
  const { machines, conditions } = demoShopData();
  const floor = parseFloor(machines);
  const record = parseCondition(conditions[0]);
  if (!record.ok || !floor.ok) throw new Error('the demonstration data do not read');
  const machine = floor.value.find(({ id }) => id === record.value.machineId)!;
  const { asFound, overhauled } = record.value;
  const of = (before: Partial<typeof asFound>, after: Partial<typeof asFound>) => withCondition(machine, { ...record.value, asFound: { ...asFound, ...before }, overhauled: { ...overhauled!, ...after } });
  const forgotten = of({ throat: 'crack found', forceReached: 500_000 }, { throat: null, forceReached: null });
  expect(standsStill(forgotten)).toEqual([CRACKED]);
  expect(forgotten.rating).toBe(500_000);
  expect(forgotten.beware).toContain('This machine reached 500 kN of its rating of 800 kN: no more is planned with.');
  const looked = of({ throat: 'crack found', forceReached: 500_000 }, { throat: 'nothing found', forceReached: 800_000 });
  expect([standsStill(looked), looked.rating]).toEqual([[], 800_000]);
  // what was good before need not be so after
  expect(of({ throat: 'nothing found' }, { throat: null }).beware).toContain('Whether the throat of this machine has cracks or weld repairs is not known.');
});

it('what a machine warns of by itself stays beside what its condition record warns of', () => {
  const { machines, conditions } = demoShopData();
  const record = parseCondition(conditions[0]);
  const floor = parseFloor(machines);
  if (!record.ok || !floor.ok) throw new Error('the demonstration data do not read');
  const machine = floor.value.find(({ id }) => id === record.value.machineId)!;
  const of = (beware?: readonly string[]) => withCondition({ ...machine, ...(beware && { beware }) }, record.value).beware ?? [];
  expect(of(['Its floor is soft.'])).toEqual(['Its floor is soft.', ...of()]);
  // read back with the record's own words in it, nothing is told twice
  expect(of(of())).toEqual(of());
});

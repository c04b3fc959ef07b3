import { expect, it } from 'vitest';
import { demoShopData } from './index.js';
import { parseCondition } from './parseCondition.js';
import { parseFloor } from './parseFloor.js';
import { withCondition } from './withCondition.js';

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

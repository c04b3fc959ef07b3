import { describe, expect, it } from 'vitest';
import { type DataFault, demoShopData, parseFloor, parseRack } from '../../shop/index.js';
import { freshMachine } from './freshMachine.js';
import { FRESH_TOOLS } from './freshTools.js';

const fields = (fault: DataFault): readonly string[] => [fault, ...(fault.others ?? [])].map(({ field }) => field);

describe('what is new on the floor or in a rack', () => {
  it('has no rating, size or price of its own, so a machine is refused beside each of its fields', () => {
    const read = parseFloor([freshMachine()]);
    expect(read.ok ? [] : fields(read.fault)).toEqual(expect.arrayContaining(['name', 'summary', 'rating', 'ratingPerLength', 'length', 'throat', 'openHeight', 'shutHeight', 'speeds.bend', 'gauge.x.max', 'price', 'site.mass', 'clampFamilies', 'crowning']));
    expect(freshMachine()).toMatchObject({ options: [], repeatability: { ram: { source: 'not known' } } });
  });

  it.each([
    ['new-punch', ['name', 'height', 'rating', 'segments', 'weight', 'tipRadius', 'includedAngle']], ['new-die', ['name', 'height', 'rating', 'segments', 'weight', 'v', 'shoulderRadius', 'includedAngle']], ['new-riser', ['height', 'length', 'width']],
  ])('a %s neither', (id, missing) => {
    const [list, tool] = FRESH_TOOLS[id]!;
    const read = parseRack({ ...demoShopData().rack, punches: [], dies: [], risers: [], [list]: [tool] });
    expect(read.ok ? [] : [...fields(read.fault)].sort()).toEqual([...missing].sort());
  });
});

import { describe, expect, it } from 'vitest';
import { type RackData, demoFloor, demoShopData, machinesToCsv, parseRack, toolsToCsv } from '../../shop/index.js';
import { machinesOfFile, rackOfFile } from './readBuyers.js';

const { rack } = demoShopData();
const csv = toolsToCsv(rack as RackData);

describe('what a buyer brings as a file', () => {
  it('tools as CSV are a rack of their own, the same tools as the table was made of', () => {
    const read = parseRack(rackOfFile(csv, 'mine.csv'));
    const ours = parseRack(rack);
    if (!read.ok || !ours.ok) throw new Error('not read');
    expect([read.value.name, read.value.demo]).toEqual(['Tools of mine.csv', false]);
    expect([read.value.punches, read.value.dies, read.value.risers]).toEqual([ours.value.punches, ours.value.dies, ours.value.risers]);
  });

  it('machines and tools as JSON, as the program prints them', () => {
    const printed = JSON.stringify({ units: {}, machines: demoFloor().slice(0, 1) });
    expect(machinesOfFile(printed, 'm.json')).toMatchObject([{ id: 'small-fast' }]);
    expect(parseRack(rackOfFile(JSON.stringify({ rack }), 'r.json')).ok).toBe(true);
  });

  it('machines as CSV are the same as the table was made of', () => {
    const { machines } = demoShopData();
    expect(machinesOfFile(machinesToCsv(machines), 'mine.csv')).toEqual(machines);
    expect(() => machinesOfFile(machinesToCsv(machines).replace(',deep-throat,', ',general,'), 'mine.csv')).toThrow("mine.csv: Line 16, id: 'general' stands in line 6 already; each machine needs its own. Line 17, of: there is no machine 'deep-throat' in this table for the option 'powered R'.");
  });

  it('what is wrong is one sentence with the file in front', () => {
    expect(() => rackOfFile(csv.replace('tip_radius', 'tip'), 'mine.csv')).toThrow(/^mine\.csv: The header has a column 'tip' that is not known/);
    expect(() => rackOfFile('{}', 'r.json')).toThrow('r.json: rack: id must be a short id (it is missing).');
    expect(() => machinesOfFile('kind,id', 'm.json')).toThrow('m.json is no JSON.');
    expect(() => machinesOfFile(JSON.stringify([{ ...demoFloor()[0], throat: -1 }]), 'm.json')).toThrow('m.json: small-fast: throat must be a number from 0 to 2000 mm (-1 was given).');
  });
});

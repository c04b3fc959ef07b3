import { asDrawn, machinesFromCsv, parseFloor, parseRack, rackOfTable, underKey } from '../../shop/index.js';

const parsed = (text: string, name: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    throw new Error(`${name} is no JSON.`);
  }
};

/** Machines of a file, as `machines` or the floor's page writes them, JSON or CSV, or a fault in one sentence. */
export const machinesOfFile = (text: string, name: string): unknown => {
  if (/\.csv$/i.test(name)) {
    const table = machinesFromCsv(text);
    if (!table.ok) throw new Error(`${name}: ${table.fault}`);
    return table.value;
  }
  const data = asDrawn(underKey('machines', parsed(text, name)));
  const read = parseFloor(data);
  if (!read.ok) throw new Error(`${name}: ${read.fault.sentence}`);
  return data;
};

/** Tools of a file: JSON, or a table as CSV that becomes a rack of its own. */
export const rackOfFile = (text: string, name: string): unknown => {
  const rackOf = (): unknown => {
    if (!/\.csv$/i.test(name)) return asDrawn(underKey('rack', parsed(text, name)));
    const table = rackOfTable(text, 'buyers-tools', name);
    if (!table.ok) throw new Error(`${name}: ${table.fault}`);
    return table.value;
  };
  const rack = rackOf();
  const read = parseRack(rack);
  if (!read.ok) throw new Error(`${name}: ${read.fault.sentence}`);
  return rack;
};

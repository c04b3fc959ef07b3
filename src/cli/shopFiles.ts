import { basename } from 'node:path';
import { type ConditionRecord, type Machine, type Rack, asDrawn, demoFloor, demoRack, machinesFromCsv, parseCondition, parseFloor, parseRack, rackOfTable, underKey, withCondition } from '../shop/index.js';
import { Fault } from './fault.js';
import { readBytes } from './readFile.js';

/** Options of the commands that look at machines or tools. */
export interface ShopOptions {
  readonly floor?: string;
  readonly rack?: string;
  readonly condition?: string;
}

export const FLOOR_OPTION = ['--floor <file>', 'machines of your own, beside the demo floor (as `machines --json` or `machines --csv` print them)'] as const;
export const RACK_OPTION = ['--rack <file>', 'tools of your own, in place of the demo rack (as `tools --json` or `tools --csv` print them)'] as const;
export const CONDITION_OPTION = ['--condition <record.json>', 'condition record of a machine: it is promised on as far as that lets it (docs/condition.md)'] as const;

const parsed = async (path: string): Promise<unknown> => {
  const bytes = await readBytes(path);
  try {
    return asDrawn(JSON.parse(new TextDecoder().decode(bytes)));
  } catch {
    throw new Fault(`${path}: this is no JSON.`);
  }
};

const machinesOfTable = async (path: string): Promise<readonly object[]> => {
  const read = machinesFromCsv(new TextDecoder().decode(await readBytes(path)));
  if (!read.ok) throw new Fault(`${path}: ${read.fault}`);
  return read.value;
};

/** The machines of a file, JSON or a table. */
export const machinesIn = async (path: string): Promise<readonly Machine[]> => {
  const own = parseFloor(/\.csv$/i.test(path) ? await machinesOfTable(path) : underKey('machines', await parsed(path)));
  if (!own.ok) throw new Fault(`${path}: ${own.fault.sentence}`);
  return own.value;
};

/** A condition record. */
export const recordIn = async (path: string): Promise<ConditionRecord> => {
  const read = parseCondition(underKey('data', await parsed(path)));
  if (!read.ok) throw new Fault(`${path}: ${read.fault.sentence}`);
  return read.value;
};

/** The machines to try: those of the file first, then the demo floor's of other names; one of them as its record lets it be promised on. */
export const floorOf = async (options: ShopOptions): Promise<readonly Machine[]> => (await asPromised(options)).floor;

/** The same, and machines that stand beside the floor under ids of their own: the record may be of one of these, which goes before one of the floor. */
export const asPromised = async ({ floor: path, condition }: ShopOptions, beside?: readonly Machine[]): Promise<{ readonly floor: readonly Machine[]; readonly own: readonly Machine[] | undefined }> => {
  const own = path === undefined ? [] : await machinesIn(path);
  const ids = new Set(own.map(({ id }) => id));
  const all = [...own, ...demoFloor().filter(({ id }) => !ids.has(id))];
  if (condition === undefined) return { floor: all, own: beside };
  const record = await recordIn(condition);
  const holds = (machines: readonly Machine[]): boolean => machines.some(({ id }) => id === record.machineId);
  const judged = (machines: readonly Machine[]): readonly Machine[] => machines.map((machine) => (machine.id === record.machineId ? withCondition(machine, record) : machine));
  if (beside && holds(beside)) return { floor: all, own: judged(beside) };
  if (!holds(all)) throw new Fault(`${condition}: there is no machine '${record.machineId}' on the floor${beside ? ' or among those brought along' : ''}.`);
  return { floor: judged(all), own: beside };
};

/** Machines of the floor by their ids with commas between, or all; `option` is what asked for them. */
export const chosen = (ids: string, floor: readonly Machine[], option = '--machines'): readonly Machine[] => {
  if (ids === 'all') return floor;
  return ids.split(',').map((id) => {
    const found = floor.find((machine) => machine.id === id.trim());
    if (found) return found;
    throw new Fault(`${option} ${id}: no such machine on the floor; there are ${floor.map((machine) => machine.id).join(', ')} and all.`);
  });
};

/** The tools at hand: those of the file, or the demo rack. */
export const rackOf = async ({ rack: path }: ShopOptions): Promise<Rack> => {
  if (path === undefined) return demoRack();
  const own = /\.csv$/i.test(path) ? parseRack(await dataOfTable(path)) : parseRack(underKey('rack', await parsed(path)));
  if (!own.ok) throw new Fault(`${path}: ${own.fault.sentence}`);
  return own.value;
};

/** A table of tools as the data of a rack of its own. */
const dataOfTable = async (path: string): Promise<object> => {
  const read = rackOfTable(new TextDecoder().decode(await readBytes(path)), basename(path), basename(path));
  if (!read.ok) throw new Fault(`${path}: ${read.fault}`);
  return read.value;
};

import { type Machine, type Rack, asDrawn, demoFloor, demoRack, parseFloor, parseRack } from '../shop/index.js';
import { Fault } from './fault.js';
import { readBytes } from './readFile.js';

/** Options of the commands that look at machines or tools. */
export interface ShopOptions {
  readonly floor?: string;
  readonly rack?: string;
}

export const FLOOR_OPTION = ['--floor <file.json>', 'machines of your own, beside the demo floor (as `machines --json` prints them)'] as const;
export const RACK_OPTION = ['--rack <file.json>', 'tools of your own, in place of the demo rack (as `tools --json` prints them)'] as const;

const parsed = async (path: string): Promise<unknown> => {
  const bytes = await readBytes(path);
  try {
    return asDrawn(JSON.parse(new TextDecoder().decode(bytes)));
  } catch {
    throw new Fault(`${path}: this is no JSON.`);
  }
};

/** What lies under `key` where the file is an answer of this program; else the whole. */
const under = (key: string, data: unknown): unknown =>
  typeof data === 'object' && data !== null && key in data ? (data as Readonly<Record<string, unknown>>)[key] : data;

/** The machines of a file. */
export const machinesIn = async (path: string): Promise<readonly Machine[]> => {
  const own = parseFloor(under('machines', await parsed(path)));
  if (!own.ok) throw new Fault(`${path}: ${own.fault.sentence}`);
  return own.value;
};

/** The machines to try: those of the file first, then the demo floor's of other names. */
export const floorOf = async ({ floor: path }: ShopOptions): Promise<readonly Machine[]> => {
  if (path === undefined) return demoFloor();
  const own = await machinesIn(path);
  const ids = new Set(own.map(({ id }) => id));
  return [...own, ...demoFloor().filter(({ id }) => !ids.has(id))];
};

/** The tools at hand: those of the file, or the demo rack. */
export const rackOf = async ({ rack: path }: ShopOptions): Promise<Rack> => {
  if (path === undefined) return demoRack();
  const own = parseRack(under('rack', await parsed(path)));
  if (!own.ok) throw new Fault(`${path}: ${own.fault.sentence}`);
  return own.value;
};

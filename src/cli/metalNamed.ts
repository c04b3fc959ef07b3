import { type Metal, metalById, metals } from '../metal/index.js';
import { Fault } from './fault.js';
import { readBytes } from './readFile.js';

/** What every command that takes a metal says of it. */
export const METAL_WORDS = 'the sheet (see `metals`), or FILE.json with a metal of the shop\'s own: {"name": "Coil 17", "like": "dc01", "test": {"yield": 245, "tensile": 340, "uniformElongation": 21}}, or its test bends (docs/api.md)';

const ownMetal = async (path: string): Promise<Metal> => {
  const text = new TextDecoder().decode(await readBytes(path));
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw new Fault(`${path}: this is no JSON.`);
  }
  // loaded here alone: the server brings all of itself along
  const { readOwnMetal } = await import('../server/index.js');
  const own = readOwnMetal(data);
  if (!own.ok) throw new Fault(`${path}: ${own.sentence}`);
  return own.value.metal;
};

/** The metal of this id, or the one in this file. */
export const metalNamed = async (typed: string): Promise<Metal> => {
  if (/\.json$/i.test(typed)) return ownMetal(typed);
  const found = metalById(typed);
  if (found) return found;
  throw new Fault(`--metal ${typed}: no such metal; there are ${metals.map((metal) => metal.id).join(', ')}, or FILE.json.`);
};

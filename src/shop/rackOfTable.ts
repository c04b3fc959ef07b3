import { parseRack } from './parseRack.js';
import type { Result } from './result.js';
import { type RackData, toolsFromCsv } from './toolsCsv.js';

/** Stands where a table has no price at all, so that no sum ever meets it. */
const NO_CURRENCY = 'not stated';

const priced = ({ punches, dies, pricesBeyond }: RackData): boolean => pricesBeyond !== undefined || [...punches, ...dies].some((tool) => 'price' in tool);

/** A table of tools as the data of a rack of its own, or what is wrong with it; prices are taken only with their currency. `name`: the file's. */
export const rackOfTable = (text: string, id: string, name: string): Result<object, string> => {
  const table = toolsFromCsv(text);
  if (!table.ok) return table;
  if (priced(table.value) && table.value.currency === undefined) return { ok: false, fault: 'Its prices are in no currency: name it in a column currency, as EUR.' };
  const rack = { id, name: `Tools of ${name}`, demo: false, currency: NO_CURRENCY, ...table.value };
  const read = parseRack(rack);
  return read.ok ? { ok: true, value: rack } : { ok: false, fault: read.fault.sentence };
};

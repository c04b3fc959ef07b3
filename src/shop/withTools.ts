import type { Result } from './result.js';
import type { RackData } from './toolsCsv.js';

const merged = (before: readonly object[], more: readonly object[]): object[] => {
  const idOf = (tool: object): unknown => (tool as { readonly id?: unknown }).id;
  return [...before.map((tool) => more.find((m) => idOf(m) === idOf(tool)) ?? tool), ...more.filter((tool) => !before.some((b) => idOf(b) === idOf(tool)))];
};

/** The rack with these tools in it, one of the same id giving way, or the sentence why not. Prices that name no currency are in the rack's. */
export const withTools = (rack: RackData, tools: RackData): Result<RackData, string> =>
  tools.currency !== undefined && rack.currency !== undefined && tools.currency !== rack.currency
    ? { ok: false, fault: `The table's prices are in ${tools.currency}, the rack's in ${rack.currency}: a rack has one currency, and nothing is converted.` }
    : {
      ok: true,
      value: {
        ...rack, punches: merged(rack.punches, tools.punches), dies: merged(rack.dies, tools.dies), risers: merged(rack.risers, tools.risers),
        ...(tools.pricesBeyond && { pricesBeyond: { ...rack.pricesBeyond, ...tools.pricesBeyond } }),
      },
    };

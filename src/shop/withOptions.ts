import type { Machine } from './machine.js';

/** The machine as it stands with these options of its list fitted, in the order given. Ids that it does not list change nothing. */
export const withOptions = (machine: Machine, ids: readonly string[]): Machine =>
  ids.reduce<Machine>((m, id) => {
    const { x, r, z, ownX, ...plain } = m.options.find((o) => o.id === id)?.effect ?? {};
    return { ...m, ...plain, gauge: { ...m.gauge, ...(x && { x }), ...(r && { r }), ...(z && { z }), ...(ownX && { ownX }) } };
  }, machine);

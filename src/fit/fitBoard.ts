import type { Machine } from '../shop/index.js';
import type { RemedyItem } from '../trial/index.js';
import { type Way, cheapestSet } from './cheapestSet.js';
import type { FitCell } from './fitCell.js';

/** What has to be had, by name and price as entered. */
export interface Bought {
  readonly id: string;
  readonly name: string;
  readonly price: number;
}

/** The cheapest that makes all parts that can be made at all. */
export interface Cheapest {
  readonly machines: readonly Bought[];
  /** `id` is machine/option. */
  readonly options: readonly Bought[];
  /** Tools beyond the rack; the rack's own cost nothing. */
  readonly tools: readonly Bought[];
  readonly price: number;
  readonly currency: string;
  readonly proven: boolean;
  /** No set of the stated model costs less. */
  readonly bound: number;
  /** Indices of the parts that nothing looked at makes. */
  readonly cannot: readonly number[];
  /** What `proven` speaks of. */
  readonly model: string;
}

export interface FitBoard {
  readonly parts: readonly { readonly name: string; readonly thickness: number; readonly bends: number }[];
  readonly machines: readonly { readonly id: string; readonly name: string; readonly price: number; readonly currency: string }[];
  /** A row for each part, a cell for each machine. */
  readonly cells: readonly (readonly FitCell[])[];
  readonly cheapest: Cheapest | null;
  /** The same with one machine alone, in the order of `machines`. */
  readonly alone: readonly (Cheapest | null)[];
}

const MODEL =
  'The parts at the quantity asked, each on one of these machines, with the rack as it is at hand; machines, options and tools beyond the rack at their prices as entered; ' +
  'of the changes that lift a no only those that were planned again and confirmed.';

/** Does it cost money, and is it ours to sell? A wider tolerance or another drawing is for the buyer to say. */
const isBought = (item: RemedyItem): boolean => item.kind !== 'scribed line' && item.kind !== 'radius';

const waysOf = (cell: FitCell, machineKey: string): Way[] =>
  cell.verdict === 'makes' ? [[machineKey]]
    : cell.remedies.filter((r) => r.confirmed && r.items && r.items.every(isBought)).map((r) => [machineKey, ...r.items!.map((i) => i.id)]);

const cheapestOf = (machines: readonly Machine[], owned: ReadonlySet<string>, cells: readonly (readonly FitCell[])[]): Cheapest | null => {
  const [first] = machines;
  if (!first || machines.some((m) => m.currency !== first.currency)) return null;
  const named = new Map<string, { readonly kind: 'machine' | 'option' | 'tool'; readonly bought: Bought }>();
  for (const m of machines) {
    named.set(`machine ${m.id}`, { kind: 'machine', bought: { id: m.id, name: m.name, price: owned.has(m.id) ? 0 : m.price } });
  }
  for (const item of cells.flat().flatMap((c) => c.remedies.flatMap((r) => r.items ?? []))) {
    if (item.price === null || !isBought(item)) continue;
    named.set(item.id, { kind: item.kind === 'option' ? 'option' : 'tool', bought: { id: item.id, name: item.name, price: item.price } });
  }
  const parts = cells.map((row) => row.flatMap((cell, m) => waysOf(cell, `machine ${machines[m]!.id}`)));
  const found = cheapestSet(parts, new Map([...named].map(([key, { bought }]) => [key, bought.price])));
  const of = (kind: 'machine' | 'option' | 'tool'): Bought[] => found.chosen.flatMap((key) => (named.get(key)!.kind === kind ? [named.get(key)!.bought] : []));
  return {
    machines: of('machine'), options: of('option'), tools: of('tool'), price: found.price, currency: first.currency,
    proven: found.proven, bound: found.bound, cannot: found.cannot, model: MODEL,
  };
};

/** The board of parts against machines, with the cheapest that makes all. `owned`: ids of machines that stand there already. */
export const fitBoard = (
  parts: FitBoard['parts'], machines: readonly Machine[], cells: readonly (readonly FitCell[])[], owned: readonly string[] = [],
): FitBoard => ({
  parts, machines: machines.map(({ id, name, price, currency }) => ({ id, name, price, currency })), cells,
  cheapest: cheapestOf(machines, new Set(owned), cells),
  alone: machines.map((machine, m) => cheapestOf([machine], new Set(owned), cells.map((row) => [row[m]!]))),
});

import { standsStill } from '../shop/index.js';
import type { Remedy, RemedyItem } from '../trial/index.js';
import { changeKind, isBought } from './changeKind.js';
import { type Way, cheapestSet } from './cheapestSet.js';
import type { FitCell } from './fitCell.js';
import { type FitColumn, type ToolsTaken, toolsTaken } from './fitColumn.js';
import type { OptionWorth } from './optionWorth.js';

/** What has to be had, by name and price as entered. */
export interface Bought {
  readonly id: string;
  readonly name: string;
  readonly price: number;
}

/** The cheapest that makes all parts that can be made at all, all of it in one currency. */
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
  /** Parts (indices) that a change makes of which something has no price entered, so that it is not counted, and what; each is in `cannot` too. Absent where there is none. */
  readonly unpriced?: readonly { readonly part: number; readonly what: string }[];
  /** Parts (indices) among those made that are made only with a change the buyer must agree to, and which. */
  readonly asked: readonly { readonly part: number; readonly what: string }[];
  /** Indices of the parts that nothing counted makes: nothing looked at does, or only something without a price. */
  readonly cannot: readonly number[];
  /** What `proven` speaks of. */
  readonly model: string;
}

/** What the head of a column says. */
export interface BoardMachine {
  /** The column's. */
  readonly id: string;
  readonly machineId: string;
  readonly name: string;
  readonly whose: FitColumn['whose'];
  /** As entered. */
  readonly price: number;
  readonly currency: string;
  /** Name of the rack, and how much of it this machine holds. */
  readonly rack: string;
  readonly tools: ToolsTaken;
  /** Why nothing is to be bent on it for now, whatever it makes; a sentence each, absent where there is none. */
  readonly standsStill?: readonly string[];
}

export interface FitBoard {
  readonly parts: readonly { readonly name: string; readonly thickness: number; readonly bends: number }[];
  readonly machines: readonly BoardMachine[];
  /** A row for each part, a cell for each machine. */
  readonly cells: readonly (readonly FitCell[])[];
  /** Null where not all prices are in one currency. */
  readonly cheapest: Cheapest | null;
  /** The cheapest where every change of a drawing is as good as none; absent where it neither costs less nor makes more than `cheapest`. */
  readonly drawingsFree?: Cheapest;
  /** The same as `cheapest` with one machine alone, in the order of `machines`. */
  readonly alone: readonly (Cheapest | null)[];
  /** What each option of our machines buys for these parts; empty where it was not asked. */
  readonly options: readonly OptionWorth[];
}

const COUNTED =
  'The parts at the quantity asked, each on one of these machines, with the rack as it is at hand; machines, options and tools beyond the rack at their prices as entered, those without a price not counted; ' +
  'of the changes only those that were planned again and confirmed; a coarser class, another radius, a relief cut into the sheet or a part made in two';
const MODEL = `${COUNTED} only for parts that nothing else here makes.`;
const MODEL_FREE = `${COUNTED} wherever it saves money, at no price.`;

/** A way to make a part in one column, and what the buyer must agree to for it; '' for nothing. */
interface AskedWay {
  readonly way: Way;
  readonly asked: string;
  /** What of it has no price entered; '' where nothing. */
  readonly unpriced: string;
}

/** What is paid for by column: a machine of the buyer's may bear the id of one of ours, and is another machine with options of its own. */
const machineKey = ({ whose, machine }: FitColumn): string => `${whose === 'the buyer\'s' ? 'own ' : ''}machine ${machine.id}`;
/** So may a punch of one rack that of another: an adapter is for one of them. Other tools beyond a rack are the same for all. */
const itemKey = ({ whose, machine, rack }: FitColumn, { kind, id }: RemedyItem): string =>
  kind === 'adapter' ? `${id} for ${rack.id}` : kind === 'option' && whose === 'the buyer\'s' && id.startsWith(`${machine.id}/`) ? `own ${id}` : id;

/** The changes that are counted: confirmed, of this machine as it can be bought, and no line scribed by eye. */
const counted = (cell: FitCell): readonly Remedy[] =>
  cell.remedies.filter((r) => r.confirmed && r.items && changeKind(r) !== 'other machine' && r.items.every(({ kind }) => kind !== 'scribed line'));

const waysOf = (cell: FitCell, column: FitColumn): AskedWay[] =>
  cell.verdict === 'makes' ? [{ way: [machineKey(column)], asked: '', unpriced: '' }]
    : counted(cell).map((r) => ({
      way: [machineKey(column), ...r.items!.filter(isBought).map((i) => itemKey(column, i))],
      unpriced: r.items!.filter((i) => isBought(i) && i.price === null).map(({ name }) => name).join(' + '),
      asked: r.items!.filter((i) => changeKind({ items: [i] }) !== 'as drawn').map(({ name }) => name).join(' + '),
    }));

/** What asks nothing of the buyer first: of two ways that a set holds, the first is told. */
const anyWay = (ways: readonly AskedWay[]): readonly AskedWay[] => [...ways].sort((a, b) => Number(a.asked !== '') - Number(b.asked !== ''));

/** Ways that leave the drawing as it is; only where a part has none, those that the buyer must agree to. */
const asDrawnFirst = (ways: readonly AskedWay[]): readonly AskedWay[] => {
  const asDrawn = ways.filter(({ asked }) => asked === '');
  return asDrawn.length > 0 ? asDrawn : ways;
};

/** `free`: keys of the machines that the buyer has already; `allowed`: which of a part's ways are counted. Null where prices are in several currencies. */
const cheapestOf = (columns: readonly FitColumn[], free: ReadonlySet<string>, cells: readonly (readonly FitCell[])[], allowed = asDrawnFirst): Cheapest | null => {
  const currencies = new Set<string>();
  const named = new Map<string, { readonly kind: 'machine' | 'option' | 'tool'; readonly bought: Bought }>();
  for (const column of columns) {
    const { machine: m } = column;
    if (!free.has(machineKey(column))) currencies.add(m.currency);
    named.set(machineKey(column), { kind: 'machine', bought: { id: m.id, name: m.name, price: free.has(machineKey(column)) ? 0 : m.price } });
  }
  for (const [column, item] of cells.flatMap((row) => row.flatMap((cell, c) => counted(cell).flatMap((r) => (r.items ?? []).map((it) => [columns[c]!, it] as const))))) {
    if (item.price === null || !isBought(item)) continue;
    currencies.add(item.currency ?? column.machine.currency);
    const key = itemKey(column, item);
    // two racks may name two prices for one tool
    const price = Math.min(item.price, named.get(key)?.bought.price ?? Infinity);
    named.set(key, { kind: item.kind === 'option' ? 'option' : 'tool', bought: { id: item.id, name: item.name, price } });
  }
  const [currency = columns[0]?.machine.currency, ...others] = currencies;
  if (currency === undefined || others.length > 0) return null;
  const parts = cells.map((row) => allowed(row.flatMap((cell, c) => waysOf(cell, columns[c]!))));
  const found = cheapestSet(parts.map((ways) => ways.map(({ way }) => way)), new Map([...named].map(([key, { bought }]) => [key, bought.price])));
  const of = (kind: 'machine' | 'option' | 'tool'): Bought[] => found.chosen.flatMap((key) => (named.get(key)!.kind === kind ? [named.get(key)!.bought] : []));
  const chosen = new Set(found.chosen);
  const asked = parts.flatMap((ways, part) => {
    const by = ways.find(({ way }) => way.every((key) => chosen.has(key)));
    return by && by.asked !== '' ? [{ part, what: by.asked }] : [];
  });
  const unpriced = found.cannot.flatMap((part) => {
    const by = parts[part]!.find((way) => way.unpriced !== '');
    return by ? [{ part, what: by.unpriced }] : [];
  });
  return {
    asked, ...(unpriced.length > 0 && { unpriced }), machines: of('machine'), options: of('option'), tools: of('tool'), price: found.price, currency,
    proven: found.proven, bound: found.bound, cannot: found.cannot, model: allowed === asDrawnFirst ? MODEL : MODEL_FREE,
  };
};

/** The board of parts against columns, with the cheapest that makes all. `owned`: ids of machines of ours that stand at the buyer's already. */
export const fitBoard = (
  parts: FitBoard['parts'], columns: readonly FitColumn[], cells: readonly (readonly FitCell[])[], owned: readonly string[] = [], options: readonly OptionWorth[] = [],
): FitBoard => {
  const free = new Set(columns.filter(({ whose, machine }) => whose === 'the buyer\'s' || owned.includes(machine.id)).map(machineKey));
  const cheapest = cheapestOf(columns, free, cells);
  const drawingsFree = cheapest && cheapestOf(columns, free, cells, anyWay);
  return {
    parts, cells, options,
    machines: columns.map(({ id, machine, rack, whose }) => ({
      id, machineId: machine.id, name: machine.name, whose, price: machine.price, currency: machine.currency, rack: rack.name, tools: toolsTaken(machine, rack),
      ...(standsStill(machine).length > 0 && { standsStill: standsStill(machine) }),
    })),
    cheapest,
    ...(cheapest && drawingsFree && (drawingsFree.price < cheapest.price || drawingsFree.cannot.length < cheapest.cannot.length) && { drawingsFree }),
    alone: columns.map((column, c) => cheapestOf([column], free, cells.map((row) => [row[c]!]))),
  };
};

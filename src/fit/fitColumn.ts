import type { Machine, Rack } from '../shop/index.js';

/** A column of the board: a machine, and the tools that it is tried with. */
export interface FitColumn {
  /** Of its own on the board: the machine's id, with the rack's behind it where the tools are the buyer's. */
  readonly id: string;
  readonly machine: Machine;
  readonly rack: Rack;
  readonly whose: 'ours' | 'ours, with the buyer\'s tools' | 'the buyer\'s';
}

/** What a buyer has already. */
export interface BuyersOwn {
  readonly machines?: readonly Machine[];
  readonly rack?: Rack;
}

/**
 * The columns: our machines with our tools, each once more with the buyer's tools where there are any, and the buyer's present machines
 * with the tools that stand beside them.
 */
export const fitColumns = (machines: readonly Machine[], rack: Rack, buyer: BuyersOwn = {}): readonly FitColumn[] => {
  const own = buyer.rack;
  return [
    ...machines.flatMap((machine): FitColumn[] => [
      { id: machine.id, machine, rack, whose: 'ours' },
      ...(own ? [{ id: `${machine.id}+${own.id}`, machine, rack: own, whose: 'ours, with the buyer\'s tools' as const }] : []),
    ]),
    ...(buyer.machines ?? []).map((machine): FitColumn => ({ id: `own ${machine.id}`, machine, rack: own ?? rack, whose: 'the buyer\'s' })),
  ];
};

/** The racks of these columns, each once: its name, and whether it is invented. */
export const racksNamed = (columns: readonly FitColumn[]): readonly Pick<Rack, 'name' | 'demo'>[] =>
  [...new Map(columns.map(({ rack: { id, name, demo } }) => [id, { name, demo }])).values()];

/** How many tools of a rack a machine holds as they are, and the tangs and seats that it does not. */
export interface ToolsTaken {
  readonly held: number;
  readonly of: number;
  readonly others: readonly string[];
}

/** Which tools of the rack the machine's clamps and bed hold, by tang and seat. */
export const toolsTaken = ({ clampFamilies, seatFamilies }: Machine, { punches, dies }: Rack): ToolsTaken => {
  const others = [...punches.filter((p) => !clampFamilies.includes(p.tang)), ...dies.filter((d) => !seatFamilies.includes(d.tang))];
  const of = punches.length + dies.length;
  return { held: of - others.length, of, others: [...new Set(others.map((t) => t.tang))].sort() };
};

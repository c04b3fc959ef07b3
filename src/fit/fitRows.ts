import { textCell } from '../shop/index.js';
import type { FitBoard } from './fitBoard.js';
import type { FitCell } from './fitCell.js';

const HEAD = [
  'part', 'thickness, mm', 'bends', 'machine', 'whose', 'verdict', 'limit used furthest', 'used, %', 'seconds a part', 'parts an hour', 'change-over, s', 'why not', 'what would change it', 'price of that', 'currency', 'trial',
] as const;

interface Tabled {
  readonly parts: FitBoard['parts'];
  readonly machines: FitBoard['machines'];
  /** Null where it is not computed yet; with the id of its trial where that was kept. */
  readonly cells: readonly (readonly ((FitCell & { readonly trialId?: string | null }) | null)[])[];
}

const figure = (value: number | null | undefined, decimals: number): string => (value === null || value === undefined ? '' : value.toFixed(decimals));

/** A fit board as a table, a row for each cell, part by part; decimals with a point. The first row names the columns. Words are guarded against being run as formulas, our own figures stay figures. */
export const fitRows = ({ parts, machines, cells }: Tabled): readonly (readonly string[])[] => [
  HEAD,
  ...parts.flatMap(({ name, thickness, bends }, p) => machines.map((machine, c) => {
    const cell = cells[p]![c]!;
    const before = [textCell(name), String(thickness), String(bends), textCell(machine.name), textCell(machine.whose)];
    if (cell === null) return [...before, 'not computed yet', ...HEAD.slice(before.length + 1).map(() => '')];
    const [tight] = cell.margins;
    const change = cell.remedies.find(({ confirmed }) => confirmed);
    return [
      ...before, cell.verdict, tight ? textCell(`${tight.kind}: ${tight.name}`) : '', figure(tight && tight.share * 100, 1), figure(cell.seconds, 1), figure(cell.partsAnHour, 1), figure(cell.changeOver, 0),
      cell.verdict === 'makes' ? '' : textCell(cell.reasons.map(({ sentence }) => sentence).join(' ')), textCell(change?.sentence ?? ''), figure(change?.price, 2), textCell(change?.currency ?? ''), cell.trialId ?? '',
    ];
  })),
];

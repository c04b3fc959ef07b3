import type { FitCell } from './fitCell.js';
import { reasonInShort } from './reasonInShort.js';

/** Parts (indices) for which the same is to be said. */
export interface SaidOf {
  readonly words: string;
  readonly parts: readonly number[];
}

/** What a whole column says: how many parts, why not the others, and what would change it. */
export interface ColumnSum {
  /** Parts made as the machine stands. */
  readonly makes: number;
  /** Parts made beside these with a change that was confirmed. */
  readonly withChange: number;
  /** Parts that no change looked at makes. */
  readonly no: number;
  /** Parts not decided or not tried. */
  readonly open: number;
  /** Reasons of all that is not made as it stands, the most frequent first. */
  readonly why: readonly SaidOf[];
  /** Changes that together lift all that can be lifted, those that lift most parts first, each part once by the cheapest that lifts it. `price` as entered, null where none is. */
  readonly changes: readonly (SaidOf & { readonly price: number | null })[];
  /** Parts for which nothing that was looked at helps. */
  readonly noHelp: readonly number[];
}

const grouped = (said: readonly (readonly [words: string, part: number])[]): SaidOf[] => {
  const groups = new Map<string, number[]>();
  for (const [words, part] of said) groups.set(words, [...(groups.get(words) ?? []), part]);
  return [...groups].map(([words, parts]) => ({ words, parts })).sort((a, b) => b.parts.length - a.parts.length);
};

const nameOf = (remedy: FitCell['remedies'][number]): string => remedy.items?.map(({ name }) => name).join(' + ') ?? remedy.sentence;

/** The sum of one column: a cell for each part, null while it is not computed. */
export const columnSum = (cells: readonly (FitCell | null)[]): ColumnSum => {
  const of = (...verdicts: readonly FitCell['verdict'][]): number[] => cells.flatMap((cell, p) => (verdicts.includes(cell?.verdict ?? 'not tried') ? [p] : []));
  const lifted = of('makes with remedy');
  // the first remedy of a cell is its cheapest
  const first = new Map(lifted.map((p) => [p, cells[p]!.remedies.find((r) => r.confirmed)!]));
  const changes = grouped([...first].map(([p, remedy]) => [nameOf(remedy), p] as const));
  const open = of('not decided', 'not tried');
  return {
    makes: of('makes').length, withChange: lifted.length, no: of('does not make').length, open: open.length,
    why: grouped([...lifted, ...of('does not make')].sort((a, b) => a - b).map((p) => [reasonInShort(cells[p]!) ?? 'no reason given', p] as const)),
    changes: changes.map((change) => ({ ...change, price: first.get(change.parts[0]!)!.price ?? null })),
    noHelp: of('does not make'),
  };
};

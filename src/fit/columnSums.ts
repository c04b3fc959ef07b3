import { CHANGE_KINDS, type ChangeKind, changeKind, changeTerms, costOfBought } from './changeKind.js';
import { costWords } from './costs.js';
import type { FitCell } from './fitCell.js';
import { reasonInShort } from './reasonInShort.js';

/** Parts (indices) for which the same is to be said. */
export interface SaidOf {
  readonly words: string;
  readonly parts: readonly number[];
}

/** What a whole column says: how many parts, why not the others, and what would change it. */
export interface ColumnSum {
  /** How many parts in all when changes are allowed that ask more and more of the buyer, in words; first those made as it stands. */
  readonly levels: readonly { readonly words: string; readonly made: number; readonly more: number }[];
  /** Parts made as the machine stands. */
  readonly makes: number;
  /** Parts made beside these with a change that was confirmed, by what it asks for: each part by the change that asks least. */
  readonly changed: Readonly<Record<ChangeKind, number>>;
  /** Parts that no change looked at makes. */
  readonly no: number;
  /** Parts not decided or not tried. */
  readonly open: number;
  /** Reasons of all that is not made as it stands, the most frequent first. */
  readonly why: readonly SaidOf[];
  /**
   * Changes that together lift all that can be lifted, each part once: by one that leaves the drawing where there is one, the cheapest of these.
   * Those that ask least first, then those that lift most parts. `cost`: of what is bought, in words, its price as entered or that it is not; '' for nothing to buy.
   */
  readonly changes: readonly (SaidOf & { readonly cost: string; readonly kind: ChangeKind; /** What is asked beside the price; '' for nothing. */ readonly terms: string })[];
  /** Parts made only where a line scribed by eye will do, which changes no verdict. */
  readonly byEye: readonly number[];
  /** Parts for which nothing that was looked at helps. */
  readonly noHelp: readonly number[];
  /** Parts for which the looking was broken off, did not settle something, or was not asked for; one of `byEye` may be among them. */
  readonly cut: readonly number[];
}

const grouped = (said: readonly (readonly [words: string, part: number])[]): SaidOf[] => {
  const groups = new Map<string, number[]>();
  for (const [words, part] of said) groups.set(words, [...(groups.get(words) ?? []), part]);
  return [...groups].map(([words, parts]) => ({ words, parts })).sort((a, b) => b.parts.length - a.parts.length);
};

const nameOf = (remedy: FitCell['remedies'][number]): string => remedy.items?.map(({ name }) => name).join(' + ') ?? remedy.sentence;

/** What a change asks of a buyer, from the least on, as the beginning of a sentence; another machine is none of this one's. */
const LEVELS = [
  ['as drawn', 'With the options, tools and passes named'], ['other drawing', 'If the drawing may also be changed as named'], ['in two', 'If parts may also be made in two and joined'],
] as const satisfies readonly (readonly [ChangeKind, string])[];

const levelsOf = (makes: number, changed: ColumnSum['changed']): ColumnSum['levels'] => {
  let made = makes;
  return [{ words: 'As it stands', made, more: 0 }, ...LEVELS.map(([kind, words]) => {
    made += changed[kind];
    return { words, made, more: changed[kind] };
  })];
};

const unlooked = ({ remediesCut, inVain }: FitCell): boolean => remediesCut === true || inVain === undefined;

/** The sum of one column: a cell for each part, null while it is not computed. */
export const columnSum = (cells: readonly (FitCell | null)[]): ColumnSum => {
  const of = (...verdicts: readonly FitCell['verdict'][]): number[] => cells.flatMap((cell, p) => (verdicts.includes(cell?.verdict ?? 'not tried') ? [p] : []));
  const lifted = of('makes with remedy');
  // the first remedy of a cell asks least and is the cheapest of its kind
  const first = new Map(lifted.map((p) => [p, cells[p]!.remedies.find((r) => r.confirmed)!]));
  const kinds = new Map([...first].map(([p, remedy]) => [p, changeKind(remedy)]));
  const changes = grouped([...first].map(([p, remedy]) => [nameOf(remedy), p] as const)).map((change) => {
    const [p] = change.parts;
    const kind = kinds.get(p!)!;
    return { ...change, cost: costWords(costOfBought(first.get(p!)!)), kind, terms: changeTerms[kind] };
  });
  const open = of('not decided', 'not tried');
  const byEye = of('does not make').filter((p) => cells[p]!.remedies.some(({ confirmed }) => confirmed));
  const helpless = of('does not make').filter((p) => !byEye.includes(p));
  const makes = of('makes').length;
  const changed = Object.fromEntries(CHANGE_KINDS.map((kind) => [kind, lifted.filter((p) => kinds.get(p) === kind).length])) as Record<ChangeKind, number>;
  return {
    levels: levelsOf(makes, changed), makes, changed, no: of('does not make').length, open: open.length,
    why: grouped([...lifted, ...of('does not make')].sort((a, b) => a - b).map((p) => [reasonInShort(cells[p]!) ?? 'no reason given', p] as const)),
    changes: changes.sort((a, b) => CHANGE_KINDS.indexOf(a.kind) - CHANGE_KINDS.indexOf(b.kind)),
    byEye, noHelp: helpless.filter((p) => !unlooked(cells[p]!)), cut: of('does not make').filter((p) => cells[p]!.remediesCut === true || (helpless.includes(p) && unlooked(cells[p]!))),
  };
};

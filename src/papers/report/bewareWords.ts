import { type FitBoard, toldTogether } from '../../fit/index.js';
import { shortNames } from './reportWords.js';

const STEPS = String.raw`^Steps? \d+(?:, \d+)*(?: and \d+)?`;
const ABOUT = new RegExp(`${STEPS}: (.)`);
const ROOM = new RegExp(`${STEPS} (?:have|has) `);

/** Steps are numbered for each machine by itself; a buyer compares machines, so the number is left out. */
const withoutSteps = (words: string): string => words.replace(ABOUT, (_, first: string) => first.toUpperCase()).replace(ROOM, 'Some strokes have ');

/** What is to be told of every part, and what of one, which stands beside its verdicts. */
export interface Beware {
  readonly ofAll: readonly string[];
  readonly ofPart: readonly (readonly string[])[];
}

/** What the planner warned of: each sentence once, with the machines that it holds for where these are not all. */
export const bewareWords = ({ parts, machines, cells }: Pick<FitBoard, 'parts' | 'machines' | 'cells'>): Beware => {
  const names = shortNames(machines);
  const said = new Map<string, { readonly words: string; readonly of: number[] }>();
  parts.forEach((_, p) => {
    const warned = cells[p]!.map(({ warnings }) => toldTogether([...new Set(warnings.map(withoutSteps))]));
    const speaking = warned.filter((words) => words.length > 0).length;
    for (const sentence of new Set(warned.flat())) {
      const on = [...warned.keys()].filter((m) => warned[m]!.includes(sentence));
      const words = on.length === speaking ? sentence : `On ${on.map((m) => names[m]!).join('; ')}: ${sentence}`;
      const entry = said.get(words) ?? { words, of: [] };
      said.set(words, entry);
      entry.of.push(p);
    }
  });
  const all = [...said.values()];
  const general = ({ of }: { readonly of: readonly number[] }): boolean => parts.length > 1 && of.length === parts.length;
  return { ofAll: all.filter(general).map(({ words }) => words), ofPart: parts.map((_, p) => all.filter((entry) => !general(entry) && entry.of.includes(p)).map(({ words }) => words)) };
};

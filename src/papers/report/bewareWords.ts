import type { FitBoard } from '../../fit/index.js';
import { toldTogether } from '../toldTogether.js';
import { shortNames } from './reportWords.js';

const STEPS = String.raw`^Steps? \d+(?:, \d+)*(?: and \d+)?`;
const ABOUT = new RegExp(`${STEPS}: (.)`);
const ROOM = new RegExp(`${STEPS} (?:have|has) `);

/** Steps are numbered for each machine by itself; a buyer compares machines, so the number is left out. */
const withoutSteps = (words: string): string => words.replace(ABOUT, (_, first: string) => first.toUpperCase()).replace(ROOM, 'Some strokes have ');

/** What the planner warned of: each sentence once, with the parts and the machines that it holds for where these are not all. */
export const bewareWords = ({ parts, machines, cells }: Pick<FitBoard, 'parts' | 'machines' | 'cells'>): readonly string[] => {
  const names = shortNames(machines);
  const said = new Map<string, { readonly words: string; readonly on: string; readonly parts: string[] }>();
  parts.forEach(({ name }, p) => {
    const warned = cells[p]!.map(({ warnings }) => toldTogether([...new Set(warnings.map(withoutSteps))]));
    const speaking = warned.filter((words) => words.length > 0).length;
    for (const words of new Set(warned.flat())) {
      const on = [...warned.keys()].filter((m) => warned[m]!.includes(words));
      const where = on.length === speaking ? '' : ` on ${on.map((m) => names[m]!).join('; ')}`;
      const key = JSON.stringify([words, where]);
      const entry = said.get(key) ?? { words, on: where, parts: [] };
      said.set(key, entry);
      entry.parts.push(name);
    }
  });
  return [...said.values()].sort((a, b) => b.parts.length - a.parts.length).map(({ words, on, parts: of }) =>
    (of.length === parts.length && on === '' ? words : `${of.length === parts.length && of.length > 1 ? 'Every part' : of.join(', ')}${on}: ${words}`));
};

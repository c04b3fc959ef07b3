import { DEFAULT_K } from '../forming/index.js';
import type { GeneralClass } from '../metal/index.js';
import { type Dimension, type Part, defaultDimensions, develop } from '../sheet/index.js';
import { Fault } from './fault.js';

const CLASSES: readonly GeneralClass[] = ['f', 'm', 'c', 'v'];

/** A tolerance in mm, or a class of ISO 2768-1. */
const asked = (typed: string, word: string): Pick<Dimension, 'tolerance' | 'class'> => {
  const cls = CLASSES.find((known) => known === word.trim());
  if (cls !== undefined) return { class: cls };
  const value = Number(word);
  if (word.trim() === '' || !(value > 0 && value <= 1000)) throw new Fault(`--tolerance ${typed}: plus and minus so many mm, or a class (${CLASSES.join(', ')}), is wanted.`);
  return { tolerance: value };
};

/**
 * The part with tolerances on its dimensions: '0.2' or 'm' for all, 'd2=0.1' for one (its number from `part`). What names one goes
 * before what names all.
 */
export const withTolerances = (part: Part, typed: readonly string[] | undefined): Part => {
  if (typed === undefined) return part;
  const dimensions = part.dimensions ?? defaultDimensions(develop(part, part.rule ?? { name: 'K-factor', k: DEFAULT_K }));
  let forAll: Pick<Dimension, 'tolerance' | 'class'> = {};
  const byId = new Map<string, Pick<Dimension, 'tolerance' | 'class'>>();
  for (const text of typed) {
    const at = text.indexOf('=');
    if (at < 0) {
      forAll = asked(text, text);
      continue;
    }
    const id = text.slice(0, at).trim();
    if (!dimensions.some((it) => it.id === id)) throw new Fault(`--tolerance ${text}: the part has no dimension '${id}'; there are ${dimensions.map((it) => it.id).join(', ') || 'none'}.`);
    byId.set(id, asked(text, text.slice(at + 1)));
  }
  return { ...part, dimensions: dimensions.map(({ id, between, ...own }) => ({ id, between, ...(byId.get(id) ?? (Object.keys(own).length > 0 ? own : forAll)) })) };
};

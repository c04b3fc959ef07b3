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

/** The same for several parts: 'angle: d2=0.1' for the part of that name, without a name for all of them. What names a dimension needs its part named where there are several. */
export const withTolerancesOf = (parts: readonly Part[], typed: readonly string[] | undefined): readonly Part[] => {
  if (typed === undefined) return parts;
  // a name may hold a colon of its own
  const of = (text: string): readonly [name: string | undefined, words: string] => {
    const at = text.lastIndexOf(':');
    return at < 0 ? [undefined, text] : [text.slice(0, at).trim(), text.slice(at + 1).trim()];
  };
  for (const text of typed) {
    const [name, words] = of(text);
    if (name === undefined && words.includes('=') && parts.length > 1) throw new Fault(`--tolerance ${text}: of which part? Its name goes before it, as '${parts[0]!.name}: ${words}'.`);
    if (name !== undefined && !parts.some((part) => part.name === name)) throw new Fault(`--tolerance ${text}: there is no part '${name}'; there are ${parts.map((part) => part.name).join(', ')}.`);
  }
  // what is asked of all comes first, so that what is asked of one part goes before it
  const inOrder = [...typed].sort((a, b) => Number(of(a)[0] !== undefined) - Number(of(b)[0] !== undefined));
  return parts.map((part) => {
    const mine = inOrder.map(of).filter(([name]) => name === undefined || name === part.name).map(([, words]) => words);
    return mine.length === 0 ? part : withTolerances(part, mine);
  });
};

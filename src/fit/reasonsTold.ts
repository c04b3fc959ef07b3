import type { Reason } from '../trial/index.js';

/** A reason as it is told, and which of the reasons as given it stands for. */
export interface ToldReason {
  readonly sentence: string;
  readonly reason: number;
}

/** Sentences of which only the one with the least figure is told: the dimension or the flange, the same with other tools, is further from it still. */
const LEAST = [
  / scatters by (?<mm>\d+(?:\.\d+)?) mm on .*? at the best stops and order tried/,
  / is too short for V .* by (?<mm>\d+(?:\.\d+)?) mm: /,
];
const AT_BEND = /^At bend (\S+(?: and \S+)?) (with .*)$/s;
const WITH_TOOLS = /^(At bends? .*? with [^:]* over [^:]*): (.*)$/s;

const least = (sentence: string): { readonly of: string; readonly mm: number } | null => {
  const at = LEAST.map((pattern) => pattern.exec(sentence)).find((found) => found !== null);
  return at ? { of: sentence.slice(0, at.index), mm: Number(at.groups!['mm']) } : null;
};

/**
 * The reasons of one trial as a person reads them: a dimension out of its tolerance once, with the least that any tools scatter, and a flange too
 * short once, for the V that it comes nearest to; the same of several bends with one pair of tools once, and of several pairs of tools once.
 * Each where it stood first.
 */
export const reasonsTold = (reasons: readonly Pick<Reason, 'code' | 'sentence'>[]): readonly ToldReason[] => {
  const told = new Map<string, { words: string; reason: number; mm: number; bends: string[] }>();
  reasons.forEach(({ sentence, code }, reason) => {
    const nearest = least(sentence);
    const [, bend, tail] = AT_BEND.exec(sentence) ?? [];
    const key = `${code} ${nearest?.of ?? tail ?? sentence}`;
    const known = told.get(key);
    if (!known) told.set(key, { words: tail ?? sentence, reason, mm: nearest?.mm ?? 0, bends: bend === undefined ? [] : [bend] });
    else if (nearest && nearest.mm < known.mm) Object.assign(known, { words: sentence, reason, mm: nearest.mm });
    else if (bend !== undefined && !known.bends.includes(bend)) known.bends.push(bend);
  });
  return ofTools([...told.values()].map(({ words, reason, bends }) => ({ sentence: bends.length === 0 ? words : `At ${bends.length > 1 ? 'bends' : 'bend'} ${bends.join('; ')} ${words}`, reason })));
};

/** What is the same of several pairs of tools is told of the first. */
const ofTools = (told: readonly ToldReason[]): readonly ToldReason[] => {
  const groups = new Map<string, { readonly first: ToldReason; readonly tools: string; readonly words: string; more: number }>();
  for (const one of told) {
    const [, tools = one.sentence, words = ''] = WITH_TOOLS.exec(one.sentence) ?? [];
    const key = words === '' ? one.sentence : `${tools.split(' with ')[0]}: ${words}`;
    const known = groups.get(key);
    if (known) known.more++;
    else groups.set(key, { first: one, tools, words, more: 0 });
  }
  return [...groups.values()].map(({ first, tools, words, more }) => (more === 0 ? first : { ...first, sentence: `${tools} (and ${more} more ${more === 1 ? 'pair' : 'pairs'} of tools): ${words}` }));
};

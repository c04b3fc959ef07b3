import { listed } from '../trial/index.js';

const OF_ONE = /^Bend (\S+) (.*)$/s;
const FORMS = /^forms (.*)$/s;

/**
 * Sentences that say one thing of one bend each, told once of all the bends that they hold for; each where it stood first.
 *
 * @example toldTogether(['Bend b1 is x.', 'Bend b2 is x.', 'Bend b3 forms y.', 'Bend b4 forms y.']) // ['Bends b1 and b2: each is x.', 'Bends b3 and b4 form y.']
 */
export const toldTogether = (sentences: readonly string[]): readonly string[] => {
  const bends = new Map<string, string[]>();
  for (const words of new Set(sentences)) {
    const [, bend, what] = OF_ONE.exec(words) ?? [];
    const key = what ?? words;
    bends.set(key, [...(bends.get(key) ?? []), ...(bend === undefined ? [] : [bend])]);
  }
  return [...bends].map(([what, names]) => {
    if (names.length < 2) return names.length === 0 ? what : `Bend ${names[0]!} ${what}`;
    const [, formed] = FORMS.exec(what) ?? [];
    return `Bends ${listed(names)}${formed === undefined ? `: each ${what}` : ` form ${formed}`}`;
  });
};

import { listed } from '../trial/index.js';

const FORMS = /^Bend (\S+) forms (.*)$/s;

/** Sentences that say one thing of one bend each, told once of all the bends that they hold for; each where it stood first. */
export const toldTogether = (sentences: readonly string[]): readonly string[] => {
  const bends = new Map<string, string[]>();
  for (const words of sentences) {
    const [, bend, what] = FORMS.exec(words) ?? [];
    const key = what ?? words;
    bends.set(key, [...(bends.get(key) ?? []), ...(bend === undefined ? [] : [bend])]);
  }
  return [...bends].map(([what, names]) => (names.length === 0 ? what : names.length === 1 ? `Bend ${names[0]!} forms ${what}` : `Bends ${listed(names)} form ${what}`));
};

/** Warnings that say the same of several bends become one. @example ['Bend b1 is x.', 'Bend b2 is x.'] // 'Bends b1, b2: each is x.' */
export const mergedWarnings = (warnings: readonly string[]): readonly string[] => {
  const bends = new Map<string, string[]>();
  for (const words of new Set(warnings)) {
    const [, bend, rest] = /^Bend (b\d+) (.*)$/.exec(words) ?? [];
    const key = rest ?? words;
    bends.set(key, [...(bends.get(key) ?? []), ...(bend === undefined ? [] : [bend])]);
  }
  return [...bends].map(([key, of]) => (of.length === 0 ? key : of.length === 1 ? `Bend ${of[0]} ${key}` : `Bends ${of.join(', ')}: each ${key}`));
};

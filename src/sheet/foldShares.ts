import type { Part } from './part.js';

/**
 * How far each bend is turned, as shares of its angle, 0 flat to 1 finished: one number for all bends ('0.5'), or some bends by
 * name ('b1=0.5,b3=0'), the others finished.
 */
export const foldShares = (part: Part, text: string | undefined): { readonly ok: true; readonly value: readonly number[] } | { readonly ok: false; readonly sentence: string } => {
  if (text === undefined) return { ok: true, value: part.bends.map(() => 1) };
  const share = (word: string): number => {
    const value = word.trim() === '' ? NaN : Number(word);
    return value >= 0 && value <= 1 ? value : NaN;
  };
  const wrong = (word: string) => ({ ok: false, sentence: `'${word}' is no share from 0 (flat) to 1 (finished).` }) as const;
  if (!text.includes('=')) {
    const all = share(text);
    return Number.isNaN(all) ? wrong(text) : { ok: true, value: part.bends.map(() => all) };
  }
  const byName = new Map<string, number>();
  for (const piece of text.split(',')) {
    const [id = '', value = ''] = piece.split('=');
    if (!part.bends.some((bend) => bend.id === id.trim())) return { ok: false, sentence: `${part.name} has no bend '${id.trim()}'.` };
    const own = share(value);
    if (Number.isNaN(own)) return wrong(value);
    byName.set(id.trim(), own);
  }
  return { ok: true, value: part.bends.map((bend) => byName.get(bend.id) ?? 1) };
};

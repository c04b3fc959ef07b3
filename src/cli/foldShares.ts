import type { Part } from '../sheet/index.js';
import { Fault } from './fault.js';

/**
 * `--fold` in shares of each bend's angle, 0 flat to 1 finished: one number for all bends ('0.5'), or some bends by name
 * ('b1=0.5,b3=0'), the others finished.
 */
export const foldShares = (part: Part, text: string | undefined): number[] => {
  if (text === undefined) return part.bends.map(() => 1);
  const share = (word: string): number => {
    const value = word.trim() === '' ? NaN : Number(word);
    if (!(value >= 0 && value <= 1)) throw new Fault(`--fold: '${word}' is no share from 0 (flat) to 1 (finished).`);
    return value;
  };
  if (!text.includes('=')) {
    const all = share(text);
    return part.bends.map(() => all);
  }
  const byName = new Map<string, number>();
  for (const piece of text.split(',')) {
    const [id = '', value = ''] = piece.split('=');
    if (!part.bends.some((bend) => bend.id === id.trim())) throw new Fault(`--fold: ${part.name} has no bend '${id.trim()}'.`);
    byName.set(id.trim(), share(value));
  }
  return part.bends.map((bend) => byName.get(bend.id) ?? 1);
};

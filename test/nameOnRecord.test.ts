import { describe, expect, it } from 'vitest';
import { namedHeaders } from '../src/web/nameOnRecord.js';
import { askedServer } from './askedServer.js';

const server = askedServer('name');
const keptAs = async (headers: Readonly<Record<string, string>>): Promise<string> => {
  const { body } = await server.post('/api/parts', { profile: { name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] } }, headers);
  return (body as { readonly parts: readonly [{ readonly by: string }] }).parts[0].by;
};

describe('the name on the record', () => {
  it('is the one that was typed on the page, in any letters', async () => {
    // one name in two ways of writing its accent; one whose vowels are marks; half of a letter at the end
    for (const [typed, kept] of [['Łukasz', 'Łukasz'], ['Ann-Marie O’Neil', 'Ann-Marie O’Neil'], ['Re\u0301mi', 'R\u00e9mi'], ['\u0930\u0935\u093f', '\u0930\u0935\u093f'], ['王芳', '王芳'], ['Ann\ud83d', 'Ann'], ['100%', '100'], ['', 'local']] as const) {
      expect(await keptAs(namedHeaders(typed))).toBe(kept);
    }
  });

  it('is as it came where somebody else than the page sends it', async () => {
    for (const [sent, kept] of [['Ann', 'Ann'], ['J\u00fcrgen', 'J\u00fcrgen'], ['50 %', '50']] as const) expect(await keptAs({ 'x-by': sent })).toBe(kept);
  });
});

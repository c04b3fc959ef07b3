import { randomBytes } from 'node:crypto';

/** Letters and digits that are not taken for one another when read aloud or typed from paper. */
const alphabet = '23456789abcdefghjkmnpqrstuvwxyz';

/** 'p-7k2m9x4tqa': a kind's letter and 10 characters, about 49 random bits. */
export function newId(kind: 'p' | 't' | 'j' | 'f' | 'm'): string {
  let id = `${kind}-`;
  while (id.length < 12) {
    for (const byte of randomBytes(16)) {
      // Bytes past the last whole multiple would favour the first letters.
      if (byte < 248 && id.length < 12) id += alphabet[byte % alphabet.length];
    }
  }
  return id;
}

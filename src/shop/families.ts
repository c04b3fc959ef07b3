import { z } from 'zod';

// A tool fits only what holds its tang. Families are letters of our own, one for each way of holding.
const letters = [...'ABCDEFGH'];
const TANGS = letters.map((l) => `tang ${l}`);
const SEATS = letters.map((l) => `seat ${l}`);

const family = (known: readonly string[]) =>
  z.string({ error: `must be one of: ${known.join(', ')}` }).refine((s) => known.includes(s), {
    error: `must be one of: ${known.join(', ')}`,
  });

/** Of punches and clamps. */
export const tangSchema = family(TANGS);
/** Of dies, risers and beds. */
export const seatSchema = family(SEATS);

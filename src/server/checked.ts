import type { z } from 'zod';
import { HttpError } from './httpError.js';
import { issueWords } from './issueWords.js';

/** The input as the schema knows it, or 400 with the first thing that is wrong, in one sentence. */
export const checked = <S extends z.ZodType>(schema: S, input: unknown): z.output<S> => {
  const result = schema.safeParse(input, { reportInput: true });
  if (result.success) return result.data;
  throw new HttpError(400, issueWords(result.error.issues[0]!));
};

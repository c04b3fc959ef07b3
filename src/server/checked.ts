import type { z } from 'zod';
import { HttpError } from './httpError.js';

/** The input as the schema knows it, or 400 with the first thing that is wrong, in one sentence. */
export const checked = <S extends z.ZodType>(schema: S, input: unknown): z.output<S> => {
  const result = schema.safeParse(input);
  if (result.success) return result.data;
  const issue = result.error.issues[0]!;
  const where = issue.path.map(String).join('.');
  throw new HttpError(400, `${where === '' ? 'The request' : `'${where}'`} is not as it should be: ${issue.message}.`);
};

import type { z } from 'zod';
import { type Part, partFromLine, profilePart } from '../sheet/index.js';
import type { profileSchema } from './profileSchema.js';

/** The part that a typed-in profile makes, or one sentence why there is none. */
export const partOfProfile = ({ profile }: z.output<typeof profileSchema>): { readonly ok: true; readonly part: Part } | { readonly ok: false; readonly sentence: string } => {
  if ('line' in profile) {
    const typed = partFromLine(profile.line, profile.name);
    return typed.ok ? { ok: true, part: typed.value } : { ok: false, sentence: typed.fault.sentence };
  }
  const made = profilePart(profile);
  return made.ok ? { ok: true, part: made.value } : { ok: false, sentence: made.failure.sentence };
};

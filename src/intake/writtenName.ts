import { z } from 'zod';

/** Line breaks and other characters that steer, and halves of surrogate pairs, which no file can hold. */
const UNWRITABLE = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u;

/** May this stand as a name on papers, in headers and in drawing files? */
export const isWritten = (name: string): boolean => !UNWRITABLE.test(name);

/** A name as somebody types it: one line. */
export const writtenName = (most: number) =>
  z.string().trim().min(1).max(most).refine(isWritten, { error: 'a name is one line, without line breaks and other characters that cannot be written' });

import { createHash } from 'node:crypto';

/** One short name of plain data: the same content, the same name. Of an object the order of its keys counts. */
export const hashOf = (data: unknown): string => createHash('sha256').update(JSON.stringify(data)).digest('hex');

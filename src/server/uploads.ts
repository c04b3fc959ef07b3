import type { FastifyReply, FastifyRequest } from 'fastify';
import { isWritten } from '../intake/index.js';
import { HttpError } from './httpError.js';
import { tooLarge, waitingReads } from './limits.js';

/** A file out of a form, whole and within its bounds. */
export interface Upload {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** A field that came before it. */
  readonly field: (key: string) => string | undefined;
}

export const readsBusy = 'Several files are being read already; try again in a minute.';

/** Characters of a file's name that are kept. */
const LONGEST = 200;

/** Takes in the one file of each form. All that are on their way or being read are held in memory until they are answered, so there are few at a time. */
export class Uploads {
  private arriving = 0;

  /** The file, and a signal that whoever sent it is gone. `what`: what the form should hold. */
  async take(request: FastifyRequest, reply: FastifyReply, what: string): Promise<{ readonly file: Upload; readonly gone: AbortSignal }> {
    if (!request.isMultipart()) throw new HttpError(415, `${what} comes as a form with one file.`);
    if (this.arriving > waitingReads) throw new HttpError(503, readsBusy);
    this.arriving++;
    const gone = new AbortController();
    reply.raw.on('close', () => {
      this.arriving--;
      gone.abort();
    });
    return { file: await wholeFile(request), gone: gone.signal };
  }
}

const wholeFile = async (request: FastifyRequest): Promise<Upload> => {
  const file = await request.file();
  if (file === undefined) throw new HttpError(400, 'The form has no file.');
  const bytes = await file.toBuffer();
  // toBuffer() throws by itself only when a chunk follows the one that was cut off at the limit.
  if (file.file.truncated) throw new HttpError(413, tooLarge);
  const name = (file.filename as string | undefined)?.slice(0, LONGEST);
  if (name === undefined || name === '') throw new HttpError(400, 'The file in the form has no name: by its end it is known what it is.');
  if (!isWritten(name)) throw new HttpError(400, 'The name of the file in the form holds a line break or another character that cannot be written.');
  return {
    name, bytes,
    field: (key) => {
      const found = file.fields[key];
      return found !== undefined && 'value' in found ? String(found.value) : undefined;
    },
  };
};

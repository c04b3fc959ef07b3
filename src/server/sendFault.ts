import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import { HttpError } from './httpError.js';
import { tooLarge, uploadLimit } from './limits.js';

/** The framework's own faults in our words; what is not here is a 500. */
const words: Readonly<Record<string, readonly [number, string]>> = {
  FST_REQ_FILE_TOO_LARGE: [413, tooLarge],
  FST_FILES_LIMIT: [400, 'One file at a time.'],
  FST_PARTS_LIMIT: [400, 'The form has too many fields.'],
  FST_FIELDS_LIMIT: [400, 'The form has too many fields.'],
  FST_INVALID_MULTIPART_CONTENT_TYPE: [415, 'A file comes as multipart form data.'],
  FST_ERR_CTP_INVALID_MEDIA_TYPE: [415, 'This kind of content is not taken here.'],
  FST_ERR_CTP_EMPTY_JSON_BODY: [400, 'The body is empty; it must be JSON.'],
  FST_ERR_CTP_INVALID_JSON_BODY: [400, 'The body is no valid JSON.'],
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: [400, 'The body is shorter or longer than it says.'],
};

/** Answers any fault with `{ error: sentence }`. Nothing of the inside (paths, stack) leaves the program. */
export const sendFault = (fault: FastifyError | HttpError, request: FastifyRequest, reply: FastifyReply): void => {
  if (fault instanceof HttpError) {
    void reply.code(fault.status).send({ error: fault.message, ...fault.more });
    return;
  }
  if (fault.code === 'FST_ERR_CTP_BODY_TOO_LARGE') {
    void reply.code(413).send({ error: `The body is larger than the ${request.routeOptions.bodyLimit / 2 ** 20} MiB that are taken here.` });
    return;
  }
  const known = words[fault.code];
  if (known !== undefined) {
    void reply.code(known[0]).send({ error: known[1] });
    return;
  }
  const status = fault.statusCode ?? 500;
  if (status < 500) {
    void reply.code(status).send({ error: 'The request cannot be read.' });
    return;
  }
  process.stderr.write(`A defect of the program, not of the input: ${fault.stack ?? fault.message}\n`);
  void reply.code(500).send({ error: 'A defect of the program, not of the input; nothing was stored.' });
};

/** A body announced as larger than any that is taken is refused before it is read. */
export const announcedTooLarge = (length: string | undefined): boolean => Number(length ?? 0) > uploadLimit + 2 ** 20;

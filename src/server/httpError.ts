/** An answer that is not the one asked for: a status and one sentence. Thrown by the routes, sent by `sendFault`. */
export class HttpError extends Error {
  constructor(
    readonly status: number,
    sentence: string,
    /** Further fields of the body beside `error`. */
    readonly more: Readonly<Record<string, unknown>> = {},
  ) {
    super(sentence);
    this.name = 'HttpError';
  }
}

/** The thing itself, or 404 with a sentence. */
export const found = <T>(thing: T | undefined, sentence: string): T => {
  if (thing === undefined) throw new HttpError(404, sentence);
  return thing;
};

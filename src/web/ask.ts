import { namedHeaders, nameOnRecord } from './nameOnRecord.js';

/** What the server refuses, in its own sentence. */
export class ApiFault extends Error {
  constructor(sentence: string, readonly status: number, readonly body: unknown) {
    super(sentence);
    this.name = 'ApiFault';
  }
}

export const SILENT = 'The server does not answer. See that it is running, then try again.';

const sentenceOf = (body: unknown, status: number): string =>
  typeof body === 'object' && body !== null && 'error' in body && typeof body.error === 'string'
    ? body.error
    : `The server answered with fault ${status} and no sentence.`;

const ask = async (path: string, init: RequestInit = {}): Promise<Response> => {
  const answer = await fetch(path, { ...init, headers: { ...namedHeaders(nameOnRecord()), ...init.headers } }).catch((fault: unknown) => {
    if (fault instanceof DOMException && fault.name === 'AbortError') throw fault;
    throw new ApiFault(SILENT, 0, null);
  });
  if (answer.ok) return answer;
  const body: unknown = await answer.json().catch(() => null);
  throw new ApiFault(sentenceOf(body, answer.status), answer.status, body);
};

/** The answer's shape is the server's word (docs/api.md); both sides share the types. */
export const get = async <T>(path: string, signal?: AbortSignal): Promise<T> =>
  (await (await ask(path, signal ? { signal } : {})).json()) as T;

export const getText = async (path: string, signal?: AbortSignal): Promise<string> => (await ask(path, signal ? { signal } : {})).text();

export const post = async <T>(path: string, body?: unknown): Promise<T> =>
  (await (await ask(path, body === undefined ? { method: 'POST' } : {
    method: 'POST', body: JSON.stringify(body), headers: { 'content-type': 'application/json' },
  })).json()) as T;

export const remove = async <T>(path: string): Promise<T> => (await (await ask(path, { method: 'DELETE' })).json()) as T;

const formOf = (file: File, fields: Readonly<Record<string, string>>): FormData => {
  const form = new FormData();
  // fields first: the server reads a form in its order
  for (const [name, value] of Object.entries(fields)) form.append(name, value);
  form.append('file', file);
  return form;
};

/** Sends a file with fields beside it. */
export const sendFile = async <T>(path: string, file: File, fields: Readonly<Record<string, string>>, signal?: AbortSignal): Promise<T> => {
  return (await (await ask(path, { method: 'POST', body: formOf(file, fields), ...(signal ? { signal } : {}) })).json()) as T;
};

/** A file of the server's. */
export const getFile = async (path: string, name: string): Promise<File> => new File([await (await ask(path)).blob()], name);

/** Sends a file and tells how far it has got, 0 to 1 (fetch cannot tell). */
export const upload = <T>(path: string, file: File, fields: Readonly<Record<string, string>>, sent: (share: number) => void): Promise<T> =>
  new Promise((done, refuse) => {
    const request = new XMLHttpRequest();
    request.open('POST', path);
    for (const [name, value] of Object.entries(namedHeaders(nameOnRecord()))) request.setRequestHeader(name, value);
    request.upload.onprogress = (event) => event.lengthComputable && sent(event.loaded / event.total);
    request.onerror = () => refuse(new ApiFault(SILENT, 0, null));
    request.onload = () => {
      let body: unknown = null;
      try {
        body = JSON.parse(request.responseText);
      } catch {
        body = null;
      }
      if (request.status >= 200 && request.status < 300) done(body as T);
      else refuse(new ApiFault(sentenceOf(body, request.status), request.status, body));
    };
    request.send(formOf(file, fields));
  });

export const sentence = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault));

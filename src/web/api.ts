import type { Metal } from '../metal/index.js';
import type { JobView, PartSummary } from '../server/index.js';
import type { Assumption } from '../sheet/index.js';
import type { Machine } from '../shop/index.js';
import type { PartRevision, RefusedRecord, StoredPart, StoredTrial, TrialRecord } from '../store/index.js';
import { userName } from './userName.js';

/** What the server said was wrong, in its own sentence. */
export class Refusal extends Error {
  constructor(
    sentence: string,
    readonly status: number,
    readonly refused: readonly RefusedRecord[] = [],
  ) {
    super(sentence);
    this.name = 'Refusal';
  }
}

export interface PartPageData extends StoredPart {
  readonly assumptions: readonly Assumption[];
  readonly summary: PartSummary;
  readonly revisions: readonly PartRevision[];
}

/** Which rule makes the nominal blank: the query of the part's own addresses. */
export interface RuleChoice {
  readonly rule: string;
  readonly k: number;
}

export const ruleQuery = ({ rule, k }: RuleChoice): string =>
  rule === 'K-factor' ? `rule=K-factor&k=${k}` : `rule=${encodeURIComponent(rule)}`;

const noAnswer = 'The server does not answer: is Brakewright still running on this computer?';

/** A header holds no letters beyond latin-1; the server drops what is no letter, digit or one of a few marks. */
const headers = (): Record<string, string> => {
  const name = userName().replace(/[^\x20-\xff]/g, '').trim();
  return name === '' ? {} : { 'x-by': name };
};

const refusalOf = (status: number, text: string): Refusal => {
  try {
    const body = JSON.parse(text) as { readonly error?: string; readonly refused?: readonly RefusedRecord[] };
    if (typeof body.error === 'string') return new Refusal(body.error, status, body.refused ?? []);
  } catch {
    // not JSON: said below
  }
  return new Refusal(`The server answered with an error (${status}).`, status);
};

const ask = async (path: string, init: RequestInit = {}): Promise<Response> => {
  const answer = await fetch(path, { ...init, headers: { ...headers(), ...init.headers } }).catch((fault: Error) => {
    throw init.signal?.aborted === true ? fault : new Refusal(noAnswer, 0);
  });
  if (!answer.ok) throw refusalOf(answer.status, await answer.text());
  return answer;
};

const get = async <T>(path: string, signal?: AbortSignal): Promise<T> =>
  (await (await ask(path, signal === undefined ? {} : { signal })).json()) as T;

const post = async <T>(path: string, body: unknown): Promise<T> =>
  (await (await ask(path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })).json()) as T;

const id = encodeURIComponent;

export const getParts = async (signal?: AbortSignal): Promise<readonly PartRevision[]> =>
  (await get<{ parts: readonly PartRevision[] }>('/api/parts', signal)).parts;

export const getPart = (partId: string, rule: RuleChoice, signal?: AbortSignal): Promise<PartPageData> =>
  get<PartPageData>(`/api/parts/${id(partId)}?${ruleQuery(rule)}`, signal);

export const purgePart = async (partId: string): Promise<void> => void (await ask(`/api/parts/${id(partId)}`, { method: 'DELETE' }));

export const getMachines = async (signal?: AbortSignal): Promise<readonly Machine[]> =>
  (await get<{ machines: readonly Machine[] }>('/api/machines', signal)).machines;

export const getMetals = async (signal?: AbortSignal): Promise<readonly Metal[]> =>
  (await get<{ metals: readonly Metal[] }>('/api/metals', signal)).metals;

export const getTrials = async (partId: string | null, signal?: AbortSignal): Promise<readonly TrialRecord[]> =>
  (await get<{ trials: readonly TrialRecord[] }>(`/api/trials${partId === null ? '' : `?partId=${id(partId)}`}`, signal)).trials;

export const getTrial = (trialId: string, signal?: AbortSignal): Promise<StoredTrial> => get<StoredTrial>(`/api/trials/${id(trialId)}`, signal);

export const getJobs = async (signal?: AbortSignal): Promise<readonly JobView[]> =>
  (await get<{ jobs: readonly JobView[] }>('/api/jobs', signal)).jobs;

export interface TrialAsked {
  readonly partId: string;
  readonly machineId: string;
  readonly metalId: string;
  readonly quantity: number;
  readonly seconds: number;
}

export const startTrial = async (asked: TrialAsked): Promise<readonly { readonly jobId: string; readonly machineId: string }[]> =>
  (await post<{ jobs: readonly { jobId: string; machineId: string }[] }>('/api/trials', asked)).jobs;

export const stopJob = (jobId: string): Promise<JobView> => post<JobView>(`/api/jobs/${id(jobId)}/stop`, {});

export const getText = async (path: string, signal: AbortSignal): Promise<string> => (await ask(path, { signal })).text();

export interface Uploaded {
  readonly parts: readonly PartRevision[];
  readonly refused: readonly RefusedRecord[];
}

/** Sends a STEP file; `progress` hears the share sent, 0 to 1. After 1 the server still reads it. */
export const uploadPart = (file: File, progress: (share: number) => void): Promise<Uploaded> =>
  new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    const form = new FormData();
    form.append('file', file, file.name);
    request.open('POST', '/api/parts');
    for (const [name, value] of Object.entries(headers())) request.setRequestHeader(name, value);
    request.upload.onprogress = (event) => progress(event.lengthComputable ? event.loaded / event.total : 0);
    request.onerror = () => reject(new Refusal(noAnswer, 0));
    request.onload = () => {
      if (request.status === 201) resolve(JSON.parse(request.responseText) as Uploaded);
      else reject(refusalOf(request.status, request.responseText));
    };
    request.send(form);
  });

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect } from 'vitest';
import { type JobView, startServer } from '../src/server/index.js';

interface Answer {
  readonly status: number;
  readonly body: never;
  readonly headers: Headers;
}

/** A real server with a real store in a folder of its own, from before a file's first test to after its last, asked through fetch. */
export interface AskedServer {
  readonly url: string;
  readonly dataDir: string;
  /** Ends it and begins it again on the same store. */
  readonly restart: () => Promise<void>;
  readonly ask: (path: string, init?: RequestInit) => Promise<Answer>;
  readonly post: (path: string, body: unknown, headers?: Readonly<Record<string, string>>) => Promise<Answer>;
  readonly upload: (name: string, bytes: Uint8Array<ArrayBuffer> | string) => Promise<Answer>;
  /** An angle 1.5 thick, inside radius 1.5, 100 long, of two flanges (40 and 60 outside): its id. */
  readonly addAngle: (name?: string, flanges?: readonly [number, number]) => Promise<string>;
  /** The job when it has ended. */
  readonly ended: (jobId: string) => Promise<JobView>;
}

/** ms between two looks at a job. */
const LOOK = 100;

/** Called once at the head of a test file; `by` is the name on the record of what is posted. */
export const askedServer = (name: string, by?: string): AskedServer => {
  let dataDir = '';
  let server: Awaited<ReturnType<typeof startServer>>;
  beforeAll(async () => {
    dataDir = mkdtempSync(join(tmpdir(), `brakewright-${name}-`));
    server = await startServer({ port: 0, dataDir });
  });
  afterAll(async () => {
    await server.close();
    rmSync(dataDir, { recursive: true, force: true });
  });

  const ask: AskedServer['ask'] = async (path, init) => {
    const response = await fetch(server.url + path, init);
    return { status: response.status, body: (await response.json()) as never, headers: response.headers };
  };
  const post: AskedServer['post'] = (path, body, headers = {}) =>
    ask(path, { method: 'POST', headers: { 'content-type': 'application/json', ...(by === undefined ? {} : { 'x-by': by }), ...headers }, body: JSON.stringify(body) });
  return {
    get url() { return server.url; },
    get dataDir() { return dataDir; },
    restart: async () => {
      await server.close();
      server = await startServer({ port: 0, dataDir });
    },
    ask,
    post,
    upload: (file, bytes) => {
      const form = new FormData();
      form.append('file', new Blob([bytes]), file);
      return ask('/api/parts', { method: 'POST', body: form });
    },
    addAngle: async (called = 'angle', flanges = [40, 60]) => {
      const { status, body } = await post('/api/parts', { profile: { name: called, thickness: 1.5, insideRadius: 1.5, width: 100, flanges, turns: [90] } }, { 'x-by': by ?? 'Ann' });
      expect(status).toBe(201);
      return (body as { parts: { id: string }[] }).parts[0]!.id;
    },
    ended: async (jobId) => {
      for (;;) {
        const job: JobView = (await ask(`/api/jobs/${jobId}`)).body;
        if (job.endedAt !== null) return job;
        await new Promise((resolve) => setTimeout(resolve, LOOK));
      }
    },
  };
};

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { selfSigned } from '../../test/selfSigned.js';
import { type RunningServer, startServer } from './index.js';

/** A server that listens on every address of this computer, so with passphrase and TLS. */
const passphrase = 'a long enough passphrase';
const tls = selfSigned();
let dir: string;
let server: RunningServer;
let port: number;

beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'brakewright-wide-'));
  writeFileSync(join(dir, 'key.pem'), tls.key);
  writeFileSync(join(dir, 'cert.pem'), tls.cert);
  server = await startServer({ port: 0, host: '0.0.0.0', dataDir: join(dir, 'store'), passphrase, tlsKey: join(dir, 'key.pem'), tlsCert: join(dir, 'cert.pem') });
  port = Number(new URL(server.url).port);
});

afterAll(async () => {
  await server.close();
  rmSync(dir, { recursive: true, force: true });
});

const ask = (path: string, headers: Record<string, string> = {}, method = 'GET', body = ''): Promise<{ readonly status: number; readonly text: string }> =>
  new Promise((resolve, reject) => {
    request({ host: 'localhost', port, path, method, ca: tls.cert, headers: { ...headers, ...(body === '' ? {} : { 'content-type': 'application/json' }) } }, (response) => {
      let text = '';
      response.on('data', (data: Buffer) => (text += data.toString()));
      response.on('end', () => resolve({ status: response.statusCode!, text }));
    }).on('error', reject).end(body);
  });
const as = (name: string, word: string): Record<string, string> => ({ authorization: `Basic ${Buffer.from(`${name}:${word}`).toString('base64')}` });

test('over TLS, with the passphrase; the name given with it goes on the record', async () => {
  expect(server.url).toMatch(/^https:/);
  expect((await ask('/api/parts')).status).toBe(401);
  expect((await ask('/')).status).toBe(401);
  expect((await ask('/api/parts', as('ann', passphrase))).status).toBe(200);
  const profile = { name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] };
  const kept = await ask('/api/parts', as('ann', passphrase), 'POST', JSON.stringify({ profile }));
  expect([kept.status, JSON.parse(kept.text)]).toMatchObject([201, { parts: [{ by: 'ann' }] }]);
  expect((await ask('/api/parts', { ...as('ann', passphrase), origin: 'https://parts.example' })).status).toBe(403);
});

test('after ten wrong passphrases in a minute even the right one must wait', async () => {
  for (let n = 0; n < 10; n++) expect((await ask('/api/parts', as('ann', `guess ${n}`))).status).toBe(401);
  expect((await ask('/api/parts', as('ann', passphrase))).status).toBe(429);
});

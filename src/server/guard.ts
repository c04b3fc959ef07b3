import { createHash, timingSafeEqual } from 'node:crypto';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { HttpError } from './httpError.js';
import { wrongPassphrases } from './limits.js';
import { announcedTooLarge } from './sendFault.js';
import type { ListenOptions } from './serverOptions.js';

/**
 * Pages get scripts, styles, fonts and pictures from this server alone; inline style attributes are allowed because
 * drawings size themselves by them, inline scripts are not.
 */
const pagePolicy = [
  "default-src 'none'", "script-src 'self'", "style-src 'self' 'unsafe-inline'", "img-src 'self' data: blob:", "font-src 'self' data:",
  "connect-src 'self'", "worker-src 'self' blob:", "frame-ancestors 'none'", "base-uri 'none'", "form-action 'self'",
].join('; ');

/** For a drawing opened by itself: it may style itself and do nothing else. */
export const drawingPolicy = "default-src 'none'; style-src 'unsafe-inline'; sandbox";

const ownNames = new Set(['localhost', '127.0.0.1', '[::1]']);

/** Headers on every answer; on every request the host asked for, the page that asks, and the passphrase where one is needed. */
export const guard = (app: FastifyInstance, options: ListenOptions): void => {
  const admit = options.passphrase === undefined ? () => undefined : passphraseGate(options.passphrase);
  const scheme = options.tls === undefined ? 'http' : 'https';

  app.addHook('onRequest', async (request, reply) => {
    reply.headers({
      'content-security-policy': pagePolicy,
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'permissions-policy': 'camera=(), microphone=(), geolocation=()',
      'cache-control': 'no-store',
      ...(options.tls === undefined ? {} : { 'strict-transport-security': 'max-age=31536000' }),
    });
    const host = request.headers.host ?? '';
    // A foreign name that was made to point at this computer (DNS rebinding) shows in the Host header.
    if (!options.wide && !ownNames.has(host.replace(/:\d+$/, ''))) {
      throw new HttpError(421, 'This server answers to localhost only.');
    }
    const { origin } = request.headers;
    if (origin !== undefined && origin !== `${scheme}://${host}`) {
      throw new HttpError(403, 'A page of another site may not use this server.');
    }
    if (announcedTooLarge(request.headers['content-length'])) {
      // Without this the connection would go on taking in what nobody reads.
      reply.header('connection', 'close');
      throw Object.assign(new Error(), { code: 'FST_REQ_FILE_TOO_LARGE' });
    }
    const waits = admit(request);
    if (waits !== undefined) {
      if (waits.status === 401) reply.header('www-authenticate', 'Basic realm="Brakewright", charset="UTF-8"');
      throw waits;
    }
  });
};

/** A header's value as it was before it was percent-encoded; as it came where it was not. */
const decoded = (value: string): string => {
  try {
    return decodeURIComponent(value);
  } catch {
    return value;
  }
};

/** Who asks, for the record: the name given with the passphrase, or the one a page sends along. */
export const whoAsks = (request: FastifyRequest): string => {
  const name = credentials(request)?.name ?? decoded(String(request.headers['x-by'] ?? ''));
  // anything but letters with their marks, digits and a few signs is dropped
  const clean = Array.from(name.normalize('NFC').replace(/[^\p{L}\p{M}\p{N} ._@'’-]/gu, '').trim()).slice(0, 40).join('');
  return clean === '' ? 'local' : clean;
};

const credentials = (request: FastifyRequest): { readonly name: string; readonly passphrase: string } | undefined => {
  const [kind, code] = (request.headers.authorization ?? '').split(' ');
  if (kind?.toLowerCase() !== 'basic' || code === undefined) return undefined;
  const text = Buffer.from(code, 'base64').toString('utf8');
  const at = text.indexOf(':');
  return at < 0 ? undefined : { name: text.slice(0, at), passphrase: text.slice(at + 1) };
};

const passphraseGate = (passphrase: string): ((request: FastifyRequest) => HttpError | undefined) => {
  const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
  const right = digest(passphrase);
  const wrong = new Map<string, { count: number; since: number }>();
  return (request) => {
    const now = Date.now();
    for (const [address, tries] of wrong) if (now - tries.since > 60_000) wrong.delete(address);
    const tries = wrong.get(request.ip);
    if (tries !== undefined && tries.count >= wrongPassphrases) {
      return new HttpError(429, 'Too many wrong passphrases; wait a minute.');
    }
    const given = credentials(request);
    if (given !== undefined && timingSafeEqual(digest(given.passphrase), right)) return undefined;
    if (given !== undefined) wrong.set(request.ip, { count: (tries?.count ?? 0) + 1, since: tries?.since ?? now });
    return new HttpError(401, 'This server asks for its passphrase.');
  };
};

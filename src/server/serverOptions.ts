import { readFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { fileURLToPath } from 'node:url';
import { leastPassphrase } from './limits.js';

export interface ServerOptions {
  /** 0 for any free one. */
  readonly port?: number;
  /** The address to listen on: this computer alone unless told otherwise. */
  readonly host?: string;
  /** Folder of the store. */
  readonly dataDir?: string;
  /** Needed, with both TLS files, when `host` is more than this computer. */
  readonly passphrase?: string;
  /** PEM files. */
  readonly tlsKey?: string;
  readonly tlsCert?: string;
  /** Folder of the built pages. */
  readonly pages?: string;
}

export interface ListenOptions {
  readonly port: number;
  readonly host: string;
  readonly wide: boolean;
  readonly dataDir: string;
  readonly passphrase?: string;
  readonly tls?: { readonly key: Buffer; readonly cert: Buffer };
  readonly pages: string;
}

/** Why the server does not start, in one sentence. */
export class StartRefusal extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'StartRefusal';
  }
}

/** src/server/ and dist/server/ both lie two folders below the project's root. */
const projectRoot = fileURLToPath(new URL('../../', import.meta.url));
const defaultPort = 4680;

/** The options filled in from the environment and by default; throws a StartRefusal when they do not go together. */
export const listenOptions = (given: ServerOptions, env: NodeJS.ProcessEnv = process.env): ListenOptions => {
  const host = given.host ?? '127.0.0.1';
  const wide = !isLoopback(host);
  const passphrase = given.passphrase ?? env['BRAKEWRIGHT_PASSPHRASE'];
  const keyFile = given.tlsKey ?? env['BRAKEWRIGHT_TLS_KEY'];
  const certFile = given.tlsCert ?? env['BRAKEWRIGHT_TLS_CERT'];
  const base = {
    port: given.port ?? defaultPort,
    host, wide,
    dataDir: given.dataDir ?? env['BRAKEWRIGHT_DATA'] ?? `${projectRoot}data-store`,
    pages: given.pages ?? `${projectRoot}dist/web`,
  };
  if (!wide) return base;
  if (passphrase === undefined || keyFile === undefined || certFile === undefined) {
    throw new StartRefusal(
      `Listening on ${host} reaches beyond this computer and needs a passphrase (BRAKEWRIGHT_PASSPHRASE) and a TLS key and certificate ` +
      '(BRAKEWRIGHT_TLS_KEY, BRAKEWRIGHT_TLS_CERT: PEM files).',
    );
  }
  if (passphrase.length < leastPassphrase) {
    throw new StartRefusal(`The passphrase has ${passphrase.length} characters; ${leastPassphrase} are the least.`);
  }
  return { ...base, passphrase, tls: { key: pem(keyFile, 'TLS key'), cert: pem(certFile, 'TLS certificate') } };
};

const isLoopback = (host: string): boolean =>
  host === 'localhost' || host === '::1' || (isIP(host) === 4 && host.startsWith('127.'));

const pem = (file: string, what: string): Buffer => {
  try {
    return readFileSync(file);
  } catch (error) {
    throw new StartRefusal(`The ${what} cannot be read from ${file} (${(error as NodeJS.ErrnoException).code ?? 'unknown'}).`);
  }
};

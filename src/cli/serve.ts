import { createServer } from 'node:net';
import type { Command } from 'commander';
import { type RunningServer, StartRefusal, startServer } from '../server/index.js';
import { startStepReader } from '../intake/index.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { wholeNumber } from './numbers.js';
import { type OutputOptions, answer } from './print.js';

/** Where the pages are served when no port is named. */
const DEFAULT_PORT = 4680;
/** How many ports above it are tried when it is taken. */
const NEXT_PORTS = 20;

interface ServeOptions {
  readonly port?: number;
  readonly host?: string;
  readonly dataDir?: string;
}

const isFree = (port: number, host: string): Promise<boolean> =>
  new Promise((done) => {
    const probe = createServer();
    probe.once('error', (fault: NodeJS.ErrnoException) => done(fault.code !== 'EADDRINUSE'));
    probe.listen(port, host, () => probe.close(() => done(true)));
  });

/** The port named, or else the first free one from the default on. */
const portFor = async ({ port, host = '127.0.0.1' }: ServeOptions): Promise<number> => {
  if (port !== undefined) return port;
  for (let candidate = DEFAULT_PORT; candidate < DEFAULT_PORT + NEXT_PORTS; candidate++) {
    if (await isFree(candidate, host)) return candidate;
  }
  throw new Fault(`The ports ${DEFAULT_PORT} to ${DEFAULT_PORT + NEXT_PORTS - 1} are all taken: name a free one with --port.`);
};

const start = async (options: ServeOptions): Promise<RunningServer> => {
  try {
    return await startServer({ ...options, port: await portFor(options) });
  } catch (fault) {
    throw fault instanceof StartRefusal ? new Fault(fault.message) : fault;
  }
};

const stopped = (): Promise<void> =>
  new Promise((done) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => done());
  });

/** Serves the pages until the process is told to stop, then closes what is open. `ready` hears the address. */
const serveUntilStopped = async (options: ServeOptions, ready: (url: string) => void | Promise<void>): Promise<void> => {
  const server = await start(options);
  const end = stopped();
  await ready(server.url);
  await end;
  await server.close();
};

/** What is printed once it listens. */
const inWords = (url: string): string => `Brakewright is at ${url} (Ctrl-C ends it)`;

/** `serve`: the pages and the HTTP API. */
export const serveCommand = (): Command =>
  commandWith('serve', 'serve the pages and the HTTP API until stopped')
    .option('--port <port>', `port to listen on (default: the first free one from ${DEFAULT_PORT} on)`)
    .option('--host <address>', 'address to listen on; any other than this computer needs a passphrase and TLS (docs/api.md)')
    .option('--data <folder>', 'where parts and trials are kept')
    .action(async (options: OutputOptions & { readonly port?: string; readonly host?: string; readonly data?: string }) => {
      await serveUntilStopped(
        {
          ...(options.port === undefined ? {} : { port: wholeNumber('--port', options.port, 0, 65_535) }),
          ...(options.host === undefined ? {} : { host: options.host }),
          ...(options.data === undefined ? {} : { dataDir: options.data }),
        },
        (url) => {
          // the first buyer's file should not wait for the geometry kernel
          startStepReader(false);
          return answer({ url }, () => inWords(url), options);
        },
      );
    });

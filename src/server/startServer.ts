import { hostname } from 'node:os';
import multipart from '@fastify/multipart';
import fastify, { type FastifyInstance } from 'fastify';
import { closeStepReader } from '../intake/index.js';
import { demoParts } from '../sheet/index.js';
import { openStore, type Store } from '../store/index.js';
import type { Context } from './context.js';
import { EnvelopeDesk } from './envelopeDesk.js';
import { FitDesk } from './fitDesk.js';
import { guard } from './guard.js';
import { JobPool } from './jobPool.js';
import { bodyLimit, requestSeconds, uploadLimit, waitingReads } from './limits.js';
import { oneAtATime } from './oneAtATime.js';
import { envelopeRoutes } from './routes/envelopes.js';
import { fitRoutes } from './routes/fits.js';
import { handoutRoutes } from './routes/handouts.js';
import { healthRoutes } from './routes/health.js';
import { jobRoutes } from './routes/jobs.js';
import { pageRoutes } from './routes/pages.js';
import { PaperDesk } from './paperDesk.js';
import { paperRoutes } from './routes/papers.js';
import { partRoutes } from './routes/parts.js';
import { metalRoutes } from './routes/metals.js';
import { measuredRoutes } from './routes/measured.js';
import { pieceRoutes } from './routes/pieces.js';
import { bendRoutes } from './routes/bend.js';
import { sectionRoutes } from './routes/sections.js';
import { shopRoutes } from './routes/shop.js';
import { takeInRoutes } from './routes/takeIn.js';
import { trialRoutes } from './routes/trials.js';
import { sendFault } from './sendFault.js';
import { ShopKeeper } from './shopKeeper.js';
import { readsBusy, Uploads } from './uploads.js';
import { type ListenOptions, listenOptions, type ServerOptions, StartRefusal } from './serverOptions.js';

export interface RunningServer {
  readonly url: string;
  /** Ends requests and jobs, closes the store. */
  close(): Promise<void>;
}

/** Opens the store and serves API and pages. Rejects with a StartRefusal, one sentence, when it may not or cannot. */
export const startServer = async (options: ServerOptions = {}): Promise<RunningServer> => {
  const listen = listenOptions(options);
  const opened = openStore(listen.dataDir);
  if (!opened.ok) throw new StartRefusal(opened.sentence);
  const { store } = opened;
  const jobs = new JobPool(store);
  const fits = new FitDesk(store);
  const envelopes = new EnvelopeDesk();
  const desk = new PaperDesk();
  const layouts = new PaperDesk('layout for all parts', ': ask for fewer of them, or for a day without one layout');
  const sums = new PaperDesk('calculation');
  const shop = new ShopKeeper(store);
  try {
    await store.stopLeftoverJobs('stopped by restart');
    await firstStart(store);
    await shop.firstStart();
    const app = await application(listen, { store, jobs, fits, envelopes, desk, layouts, sums, shop, uploads: new Uploads(), inTurn: oneAtATime(waitingReads, readsBusy) });
    await app.listen({ port: listen.port, host: listen.host });
    return { url: urlOf(app, listen), close: () => closeAll(app, jobs, fits, [envelopes, desk, layouts, sums], store) };
  } catch (error) {
    await store.close();
    throw refusalOf(error as NodeJS.ErrnoException, listen);
  }
};

const application = async (listen: ListenOptions, context: Context): Promise<FastifyInstance> => {
  const app = fastify({
    logger: false, bodyLimit, requestTimeout: requestSeconds * 1000, forceCloseConnections: true,
    ...(listen.tls === undefined ? {} : { https: listen.tls }),
  }) as FastifyInstance;
  app.setErrorHandler(sendFault);
  guard(app, listen);
  healthRoutes(app);
  bendRoutes(app, context);
  await app.register(multipart, { limits: { fileSize: uploadLimit, files: 1, fields: 4, parts: 5 } });
  takeInRoutes(app, context);
  partRoutes(app, context);
  shopRoutes(app, context);
  sectionRoutes(app, context);
  trialRoutes(app, context);
  jobRoutes(app, context);
  fitRoutes(app, context);
  envelopeRoutes(app, context);
  pieceRoutes(app, context);
  measuredRoutes(app, context);
  metalRoutes(app, context);
  handoutRoutes(app, context);
  paperRoutes(app, context);
  await pageRoutes(app, listen.pages);
  return app;
};

/** An empty store gets the demonstration parts, marked as such. A store that was emptied on purpose stays empty. */
const firstStart = async (store: Store): Promise<void> => {
  if ((await store.events(0, 1)).length > 0) return;
  for (const [index, part] of (demoParts()).entries()) await store.addPart(part, 'program', { id: `demo-${index + 1}` });
};

const closeAll = async (app: FastifyInstance, jobs: JobPool, fits: FitDesk, desks: readonly { close(): Promise<void> }[], store: Store): Promise<void> => {
  await jobs.close();
  await fits.close();
  await app.close();
  await closeStepReader();
  for (const desk of desks) await desk.close();
  await store.close();
};

const urlOf = (app: FastifyInstance, listen: ListenOptions): string => {
  const address = app.server.address();
  const port = typeof address === 'object' && address !== null ? address.port : listen.port;
  const everywhere = listen.host === '0.0.0.0' || listen.host === '::';
  const name = everywhere ? hostname() : listen.host.includes(':') ? `[${listen.host}]` : listen.host;
  return `${listen.tls === undefined ? 'http' : 'https'}://${name}:${port}`;
};

const refusalOf = (error: NodeJS.ErrnoException, listen: ListenOptions): Error => {
  if (error.code === 'EADDRINUSE') return new StartRefusal(`Port ${listen.port} on ${listen.host} is taken by another program; choose another one.`);
  if (error.code === 'EACCES') return new StartRefusal(`Port ${listen.port} may not be opened by this user; choose one above 1023.`);
  if (error.code === 'EADDRNOTAVAIL') return new StartRefusal(`${listen.host} is no address of this computer.`);
  if (error.code?.startsWith('ERR_OSSL') === true || error.code === 'ERR_SSL_PEM_NO_START_LINE') return new StartRefusal('The TLS key or certificate is no valid PEM file.');
  return error;
};

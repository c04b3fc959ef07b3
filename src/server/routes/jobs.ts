import { Readable } from 'node:stream';
import type { FastifyInstance } from 'fastify';
import type { Context } from '../context.js';
import { found, HttpError } from '../httpError.js';
import type { JobView } from '../jobPool.js';

interface ById { readonly Params: { readonly id: string } }

/** ms between two signs of life on a quiet stream, so that nothing between closes it. */
const heartbeat = 15_000;
const listed = 200;

export const jobRoutes = (app: FastifyInstance, { jobs }: Context): void => {
  app.get('/api/jobs', async () => ({ jobs: await jobs.list(listed) }));

  app.get<ById>('/api/jobs/:id', async ({ params }) => jobOr404(await jobs.view(params.id)));

  app.post<ById>('/api/jobs/:id/stop', async ({ params }) => {
    const before = jobOr404(await jobs.view(params.id));
    if (before.endedAt !== null) throw new HttpError(409, `The job has ended already (${before.state}).`);
    await jobs.stop(params.id);
    return jobOr404(await jobs.view(params.id));
  });

  app.get<ById>('/api/jobs/:id/events', async ({ params }, reply) => {
    const stream = new Readable({ read: () => undefined });
    const push = (view: JobView): void => {
      stream.push(`data: ${JSON.stringify(view)}\n\n`);
      if (view.endedAt !== null) stream.push(null);
    };
    // Watch first, look second: a change in between is told twice rather than missed.
    const unwatch = jobs.watch(params.id, push);
    const now = await jobs.view(params.id);
    if (now === undefined) unwatch?.();
    const first = jobOr404(now);
    if (!stream.readableEnded && (first.endedAt === null || unwatch === undefined)) push(first);
    const beat = setInterval(() => stream.push(': still here\n\n'), heartbeat);
    const end = (): void => {
      clearInterval(beat);
      unwatch?.();
      stream.destroy();
    };
    stream.on('end', end);
    reply.raw.on('close', end);
    return reply.header('content-type', 'text/event-stream').header('x-accel-buffering', 'no').send(stream);
  });
};

const jobOr404 = (view: JobView | undefined): JobView => found(view, 'There is no such job.');

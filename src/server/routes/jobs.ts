import type { FastifyInstance } from 'fastify';
import type { Context } from '../context.js';
import { eventStream } from '../eventStream.js';
import { found, HttpError } from '../httpError.js';
import type { JobView } from '../jobPool.js';

interface ById { readonly Params: { readonly id: string } }

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

  app.get<ById>('/api/jobs/:id/events', ({ params }, reply) =>
    eventStream<JobView>(reply, (push) => jobs.watch(params.id, push), ({ endedAt }) => endedAt !== null, async () => jobOr404(await jobs.view(params.id))));
};

const jobOr404 = (view: JobView | undefined): JobView => found(view, 'There is no such job.');

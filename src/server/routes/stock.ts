import type { FastifyInstance } from 'fastify';
import type { Context } from '../context.js';

/** What is there to plan with: machines, tools, metals. */
export const stockRoutes = (app: FastifyInstance, { machines, rack, metals }: Context): void => {
  app.get('/api/health', async () => ({ ok: true }));
  app.get('/api/machines', async () => ({ machines }));
  app.get('/api/tools', async () => ({ rack }));
  app.get('/api/metals', async () => ({ metals }));
};

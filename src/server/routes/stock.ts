import type { FastifyInstance } from 'fastify';
import type { Context } from '../context.js';

/** What is there to plan with beside floor and racks (shop.ts). */
export const stockRoutes = (app: FastifyInstance, { metals }: Context): void => {
  app.get('/api/health', async () => ({ ok: true }));
  app.get('/api/metals', async () => ({ metals }));
};

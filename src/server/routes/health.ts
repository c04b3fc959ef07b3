import type { FastifyInstance } from 'fastify';

export const healthRoutes = (app: FastifyInstance): void => {
  app.get('/api/health', async () => ({ ok: true }));
};

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';

/** The built pages; any address that is no file and no API is a place within the one page. */
export const pageRoutes = async (app: FastifyInstance, folder: string): Promise<void> => {
  const built = existsSync(join(folder, 'index.html'));
  if (built) {
    await app.register(fastifyStatic, {
      root: folder, wildcard: true, cacheControl: false,
      // Names under assets/ carry the hash of what is in them; index.html must be asked for anew.
      setHeaders: (reply, path) => void reply.header('cache-control', /[\\/]assets[\\/]/.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache'),
    });
  }
  app.setNotFoundHandler((request, reply) => {
    const path = request.url.split('?')[0]!;
    if (path.startsWith('/api/') || !['GET', 'HEAD'].includes(request.method)) {
      return reply.code(404).send({ error: `There is nothing at ${request.method} ${path}.` });
    }
    if (/\.[a-z0-9]+$/i.test(path)) return reply.code(404).type('text/plain').send('There is no such file.');
    if (!built) return reply.code(503).type('text/plain').send('The pages are not built: run npm run build.');
    return reply.header('cache-control', 'no-cache').sendFile('index.html');
  });
};

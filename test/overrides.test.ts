import fastifyStatic from '@fastify/static';
import Fastify from 'fastify';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';

// package.json overrides two packages below fastify with versions that run on Node 20: what fastify calls in them works.
it('downloads under a name with letters beyond ASCII, and reads a cookie it set', async () => {
  const app = Fastify();
  await app.register(fastifyStatic, { root: resolve('docs') });
  app.get('/download', (_request, reply) => reply.download('kinematics.md', 'Blech 2 mm ü.md'));
  app.get('/cookie', (_request, reply) => reply.header('set-cookie', 'a=b; Path=/').send('x'));
  try {
    const download = await app.inject({ url: '/download', cookies: { k: 'v' } });
    expect(download.statusCode).toBe(200);
    // RFC 6266: an ASCII stand-in, then the name in UTF-8, percent-encoded (u with diaeresis is C3 BC)
    expect(download.headers['content-disposition']).toMatch(
      /^attachment; filename="Blech 2 mm .\.md"; filename\*=UTF-8''Blech%202%20mm%20%C3%BC\.md$/,
    );
    const cookie = await app.inject('/cookie');
    expect(cookie.cookies).toMatchObject([{ name: 'a', value: 'b', path: '/' }]);
  } finally {
    await app.close();
  }
});

import type { FastifyInstance } from 'fastify';
import { readDxfAside, readStep } from '../../intake/index.js';
import type { Store } from '../../store/index.js';
import { changeSchema, changedPart } from '../changedPart.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { disposition } from '../disposition.js';
import { whoAsks } from '../guard.js';
import { HttpError } from '../httpError.js';
import { readSeconds } from '../limits.js';
import { livePart } from './livePart.js';
import { revisionOf, ruleOf } from './rule.js';

interface ById { readonly Params: { readonly id: string } }

/** Parts that are kept: looked at, revised, purged. */
export const partRoutes = (app: FastifyInstance, { store, jobs, fits, desk, layouts, shop, inTurn }: Context): void => {
  app.get('/api/parts', async () => ({ parts: await store.parts() }));

  app.get<ById & { Querystring: { revision?: string; rule?: string; k?: string } }>('/api/parts/:id', async ({ params, query }) => {
    const stored = await livePart(store, params.id, revisionOf(query.revision));
    const rule = ruleOf(query, stored.part);
    const summary = await desk.make(`${stored.id}/${stored.revision}/summary/${JSON.stringify(rule)}`, { kind: 'summary', part: stored.part, rule });
    return { ...stored, assumptions: stored.part.assumptions, summary, revisions: await store.revisions(params.id) };
  });

  app.get<ById>('/api/parts/:id/original', async ({ params }, reply) => {
    await livePart(store, params.id);
    const file = await store.originalFile(params.id);
    if (file === undefined) throw new HttpError(404, 'This part did not come from a file.');
    return reply.type('application/octet-stream').header('content-disposition', disposition('attachment', file.name))
      .send(Buffer.from(file.bytes));
  });

  app.post<ById>('/api/parts/:id/revisions', async (request, reply) => {
    const asked = checked(changeSchema, request.body);
    const { part, revision: stands } = await livePart(store, request.params.id);
    if (asked.after !== undefined && asked.after !== stands) throw await overtaken(store, request.params.id, asked.after);
    const original = async (): Promise<Uint8Array> => {
      const file = await store.originalFile(request.params.id);
      if (file === undefined) throw new HttpError(422, 'The file that this part was read from is not kept.');
      return file.bytes;
    };
    const changed = await changedPart(part, asked, (await shop.current()).metals, {
      drawing: async (told) => {
        const bytes = await original();
        return inTurn(() => readDxfAside(bytes, part.name, told));
      },
      solid: async ({ unit, sharpRadius }) => {
        const bytes = await original();
        return inTurn(() => readStep(bytes, part.name, { seconds: readSeconds, ...(unit === undefined ? {} : { unit }), ...(sharpRadius === undefined ? {} : { sharpRadius }) }));
      },
    });
    // a file that is read again takes its time: what was kept meanwhile is not written over
    const revision = await store.addRevision(request.params.id, changed.part, changed.words, whoAsks(request), stands);
    if (revision === undefined) throw await overtaken(store, request.params.id, stands);
    return reply.code(201).send(revision);
  });

  app.delete<ById & { Querystring: { siblings?: string } }>('/api/parts/:id', async (request) => {
    const { id } = await livePart(store, request.params.id);
    const ids = request.query.siblings === 'true' ? await store.siblings(id) : [id];
    const purges = [];
    for (const each of ids) {
      await jobs.stopPart(each);
      purges.push(await store.purgePart(each, whoAsks(request)));
      await fits.forgetPart(each);
    }
    desk.forget();
    layouts.forget();
    return { purges: purges.filter((purge) => purge !== undefined) };
  });
};

/** Somebody else was quicker with a part. */
const overtaken = async (store: Store, id: string, after: number): Promise<HttpError> => {
  const { revision, by, change } = await livePart(store, id);
  return new HttpError(409, `The part stands at revision ${revision} (${by}: ${change}), not at ${after}, on which this was set: nothing of it is kept. Look at the part as it stands, then set it again.`);
};

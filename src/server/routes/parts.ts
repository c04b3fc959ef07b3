import multipart from '@fastify/multipart';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { asFormed, type Part, profilePart } from '../../sheet/index.js';
import { rooms } from '../agreed.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { whoAsks } from '../guard.js';
import { HttpError } from '../httpError.js';
import { readSeconds, tooLarge, uploadLimit, waitingReads } from '../limits.js';
import { oneAtATime } from '../oneAtATime.js';
import { livePart } from './livePart.js';
import { partSummary } from './partSummary.js';
import { ruleOf } from './rule.js';

interface ById { readonly Params: { readonly id: string } }

const length = z.number().positive().max(100_000);
const profileSchema = z.strictObject({
  profile: z.strictObject({
    name: z.string().trim().min(1).max(200),
    thickness: length, insideRadius: z.number().min(0).max(10_000), width: length,
    flanges: z.array(length).min(1).max(100),
    turns: z.array(z.number().min(-180).max(180)).max(99),
    measure: z.enum(['outside', 'inside']).default('outside'),
  }),
});
const revisionSchema = z.strictObject({
  name: z.string().trim().min(1).max(200).optional(),
  /** mm: inside radii to take for bends, by bend id, outside lengths kept. */
  radii: z.record(z.string(), z.number().min(0).max(10_000)).optional(),
});

export const partRoutes = async (app: FastifyInstance, { store, jobs }: Context): Promise<void> => {
  await app.register(multipart, { limits: { fileSize: uploadLimit, files: 1, fields: 4, parts: 5 } });
  const inTurn = oneAtATime(waitingReads, 'Several files are being read already; try again in a minute.');

  app.get('/api/parts', async () => ({ parts: await store.parts() }));

  app.post('/api/parts', async (request, reply) => {
    if (!request.isMultipart()) {
      const { profile } = checked(profileSchema, request.body);
      const made = profilePart(profile);
      if (!made.ok) throw new HttpError(422, made.failure.sentence);
      const part = await store.addPart(made.value, whoAsks(request));
      return reply.code(201).send({ parts: [part], refused: [] });
    }
    const file = await uploaded(request);
    const gone = new AbortController();
    request.raw.on('close', () => gone.abort());
    const intake = await inTurn(() => rooms.readStep!(file.bytes, file.name, { seconds: readSeconds, signal: gone.signal }));
    const refused = intake.refused.map(({ index, code, sentence }) => ({ index, code, sentence }));
    if (intake.parts.length === 0) {
      const first = refused[0]?.sentence ?? 'The file holds no solid.';
      throw new HttpError(422, refused.length < 2 ? first : `None of the ${refused.length} solids is a part that can be bent; the first: ${first}`, { refused });
    }
    const parts = await store.addReading({ file, parts: intake.parts.map(({ part }) => part), refused }, whoAsks(request));
    return reply.code(201).send({ parts, refused });
  });

  app.get<ById & { Querystring: { revision?: string; rule?: string; k?: string } }>('/api/parts/:id', async ({ params, query }) => {
    const stored = await livePart(store, params.id, revisionOf(query.revision));
    return { ...stored, assumptions: stored.part.assumptions, summary: partSummary(stored.part, ruleOf(query)), revisions: await store.revisions(params.id) };
  });

  app.get<ById>('/api/parts/:id/original', async ({ params }, reply) => {
    await livePart(store, params.id);
    const file = await store.originalFile(params.id);
    if (file === undefined) throw new HttpError(404, 'This part did not come from a file.');
    return reply.type('application/octet-stream').header('content-disposition', `attachment; filename*=UTF-8''${encodeURIComponent(file.name)}`)
      .send(Buffer.from(file.bytes));
  });

  app.post<ById>('/api/parts/:id/revisions', async (request, reply) => {
    const asked = checked(revisionSchema, request.body);
    const { part } = await livePart(store, request.params.id);
    const changed = changedPart(part, asked);
    const revision = await store.addRevision(request.params.id, changed.part, changed.words, whoAsks(request));
    return reply.code(201).send(revision);
  });

  app.delete<ById & { Querystring: { siblings?: string } }>('/api/parts/:id', async (request) => {
    const { id } = await livePart(store, request.params.id);
    const ids = request.query.siblings === 'true' ? await store.siblings(id) : [id];
    const purges = [];
    for (const each of ids) {
      await jobs.stopPart(each);
      purges.push(await store.purgePart(each, whoAsks(request)));
    }
    return { purges: purges.filter((purge) => purge !== undefined) };
  });
};

/** The one file of a form, whole and within its bounds. */
const uploaded = async (request: FastifyRequest): Promise<{ readonly name: string; readonly bytes: Uint8Array }> => {
  const file = await request.file();
  if (file === undefined) throw new HttpError(400, 'The form has no file.');
  const bytes = await file.toBuffer();
  // toBuffer() throws by itself only when a chunk follows the one that was cut off at the limit.
  if (file.file.truncated) throw new HttpError(413, tooLarge);
  const name = file.filename.slice(0, 200);
  if (!/\.(step|stp)$/i.test(name)) throw new HttpError(415, `'${name}' is no STEP file by its name (.step or .stp).`);
  if (bytes.length === 0) throw new HttpError(422, `'${name}' is empty.`);
  return { name, bytes };
};

const revisionOf = (text: string | undefined): number | undefined => {
  if (text === undefined) return undefined;
  if (!/^[1-9]\d{0,5}$/.test(text)) throw new HttpError(400, `'revision' is a whole number from 1, not '${text}'.`);
  return Number(text);
};

const changedPart = (part: Part, asked: z.output<typeof revisionSchema>): { readonly part: Part; readonly words: string } => {
  const words: string[] = [];
  let changed = part;
  const radii = Object.entries(asked.radii ?? {});
  for (const [id] of radii) if (!part.bends.some((bend) => bend.id === id)) throw new HttpError(422, `The part has no bend '${id}'.`);
  if (radii.length > 0) {
    const formed = asFormed(part, part.bends.map(({ id, insideRadius }) => ({ insideRadius: asked.radii![id] ?? insideRadius })));
    if (!formed.ok) throw new HttpError(422, formed.failure.sentence);
    changed = formed.value;
    words.push(...radii.map(([id, radius]) => `inside radius of ${id} ${radius} mm`));
  }
  if (asked.name !== undefined && asked.name !== part.name) {
    changed = { ...changed, name: asked.name };
    words.push('renamed');
  }
  if (words.length === 0) throw new HttpError(400, 'Nothing changes: give a name or the radii of bends.');
  return { part: changed, words: words.join(', ') };
};

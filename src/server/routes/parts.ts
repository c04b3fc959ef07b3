import multipart from '@fastify/multipart';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { type DxfPartResult, dxfReadingSchema, partOfProfile, profileSchema, readDxfAside, readStep, type ReadStepOptions } from '../../intake/index.js';
import { pictureToSvg, refusalPicture } from '../../papers/index.js';
import { type DxfReading, UNIT_WORDS } from '../../sheet/index.js';
import { changeSchema, changedPart } from '../changedPart.js';
import type { Store } from '../../store/index.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { whoAsks } from '../guard.js';
import { HttpError } from '../httpError.js';
import { picturedRefusals, readSeconds, tooLarge, uploadLimit, waitingReads } from '../limits.js';
import { oneAtATime } from '../oneAtATime.js';
import { livePart } from './livePart.js';
import { revisionOf, ruleOf } from './rule.js';

interface ById { readonly Params: { readonly id: string } }

const busy = 'Several files are being read already; try again in a minute.';
export const partRoutes = async (app: FastifyInstance, { store, jobs, fits, desk, layouts, shop }: Context): Promise<void> => {
  await app.register(multipart, { limits: { fileSize: uploadLimit, files: 1, fields: 4, parts: 5 } });
  const inTurn = oneAtATime(waitingReads, busy);
  /** Files being taken in or read: each is held in memory until it is answered. */
  let arriving = 0;

  app.get('/api/parts', async () => ({ parts: await store.parts() }));

  app.post('/api/parts', async (request, reply) => {
    if (!request.isMultipart()) {
      const made = partOfProfile(checked(profileSchema, request.body));
      if (!made.ok) throw new HttpError(422, made.sentence);
      const part = await store.addPart(made.part, whoAsks(request));
      return reply.code(201).send({ parts: [part], refused: [] });
    }
    if (arriving > waitingReads) throw new HttpError(503, busy);
    arriving++;
    reply.raw.on('close', () => arriving--);
    const file = await uploaded(request);
    const gone = new AbortController();
    reply.raw.on('close', () => gone.abort());
    if (file.told !== undefined) {
      const { told } = file;
      const read = await inTurn(() => readDxfAside(file.bytes, baseName(file.name), told, { signal: gone.signal }));
      if (gone.signal.aborted) return reply;
      if (!read.ok) throw drawingFault(read);
      const parts = await store.addReading({ file: { name: file.name, bytes: file.bytes }, parts: [read.value.part], refused: [] }, whoAsks(request));
      return reply.code(201).send({ parts, refused: [] });
    }
    const intake = await inTurn(() => readStep(file.bytes, file.name, { seconds: readSeconds, signal: gone.signal, ...file.solid }));
    if (gone.signal.aborted) return reply; // nobody is there to answer, and what nobody asked for any longer is not kept
    const refused = intake.refused.map(({ index, name, code, sentence, faces, measure }) => ({ index, ...(name === undefined ? {} : { name }), code, sentence, faces, ...(measure === undefined ? {} : { measure }) }));
    const seen = intake.refused.map(({ outlines, sentence, unitDoubted }, i) => ({ ...refused[i]!, ...(unitDoubted ? { unitDoubted } : {}), ...(outlines === undefined || i >= picturedRefusals ? {} : { picture: pictureToSvg(refusalPicture(outlines, sentence), `refused-${i}`) }) }));
    if (intake.parts.length === 0) {
      const first = refused[0]?.sentence ?? 'The file holds no solid.';
      throw new HttpError(422, refused.length < 2 ? first : `None of the ${refused.length} solids is a part that can be bent; the first: ${first}`, { refused: seen });
    }
    const parts = await store.addReading({ file: { name: file.name, bytes: file.bytes }, parts: intake.parts.map(({ part }) => part), refused }, whoAsks(request));
    const alike = intake.parts.flatMap(({ sameAs }, i) => (sameAs === undefined ? [] : [{ id: parts[i]!.id, of: parts[intake.parts.findIndex(({ index }) => index === sameAs)]!.id }]));
    return reply.code(201).send({ parts, refused: seen, alike });
  });

  app.post('/api/drawings', async (request, reply) => {
    if (!request.isMultipart()) throw new HttpError(415, 'A drawing comes as a form with one .dxf file.');
    if (arriving > waitingReads) throw new HttpError(503, busy);
    arriving++;
    const gone = new AbortController();
    reply.raw.on('close', () => {
      arriving--;
      gone.abort();
    });
    const file = await uploaded(request);
    const { told } = file;
    if (told === undefined) throw new HttpError(415, `'${file.name}' is no DXF file by its name (.dxf).`);
    const read = await inTurn(() => readDxfAside(file.bytes, baseName(file.name), told, { signal: gone.signal }));
    if (gone.signal.aborted) return reply;
    return read.ok ? { seen: read.seen, told, part: read.value.part } : { seen: read.seen, told, failure: read.failure };
  });

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
    return reply.type('application/octet-stream').header('content-disposition', `attachment; filename*=UTF-8''${encodeURIComponent(file.name)}`)
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

interface Upload {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Of a solid: the inside radius of bends drawn sharp (mm), and the unit that its file is in, whatever it declares. */
  readonly solid?: Pick<ReadStepOptions, 'sharpRadius' | 'unit'>;
  /** Of a flat drawing: what is told of it. */
  readonly told?: DxfReading;
}

const baseName = (fileName: string): string => fileName.replace(/\.[^.]*$/, '') || 'part';

/** The refusal of a drawing, with what was seen of it: layers and unit to choose by. */
const drawingFault = (read: Extract<DxfPartResult, { readonly ok: false }>): HttpError =>
  new HttpError(422, read.failure.sentence, { failure: read.failure, layers: read.seen.layers, unit: read.seen.unit });

const isUnit = (text: string): text is keyof typeof UNIT_WORDS => Object.hasOwn(UNIT_WORDS, text);

const toldOf = (text: string | undefined): DxfReading => {
  if (text === undefined) return { from: 'dxf' };
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw new HttpError(400, "'told' is no JSON.");
  }
  return checked(dxfReadingSchema, data);
};

/** The one file of a form, whole and within its bounds. */
const uploaded = async (request: FastifyRequest): Promise<Upload> => {
  const file = await request.file();
  if (file === undefined) throw new HttpError(400, 'The form has no file.');
  const bytes = await file.toBuffer();
  // toBuffer() throws by itself only when a chunk follows the one that was cut off at the limit.
  if (file.file.truncated) throw new HttpError(413, tooLarge);
  const name = file.filename.slice(0, 200);
  const field = (key: string): string | undefined => {
    const found = file.fields[key];
    return found !== undefined && 'value' in found ? String(found.value) : undefined;
  };
  const [sharp, unit] = [field('sharpRadius') === undefined ? undefined : Number(field('sharpRadius')), field('unit')];
  if (unit !== undefined && !isUnit(unit)) throw new HttpError(400, `'unit' is one of ${Object.keys(UNIT_WORDS).join(', ')}.`);
  if (sharp !== undefined && !(sharp >= 0 && sharp <= 1000)) throw new HttpError(400, "'sharpRadius' is an inside radius in mm, from 0 to 1000.");
  const drawing = /\.dxf$/i.test(name);
  if (!drawing && !/\.(step|stp)$/i.test(name)) throw new HttpError(415, `'${name}' is no STEP or DXF file by its name (.step, .stp or .dxf).`);
  if (bytes.length === 0) throw new HttpError(422, `'${name}' is empty.`);
  if (drawing) return { name, bytes, told: toldOf(field('told')) };
  return { name, bytes, solid: { ...(sharp === undefined ? {} : { sharpRadius: sharp }), ...(unit === undefined ? {} : { unit }) } };
};

import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { type DxfPartResult, dxfReadingSchema, partOfProfile, profileSchema, readDxfAside, readStep, type ReadStepOptions } from '../../intake/index.js';
import { pictureToSvg, refusalPicture } from '../../papers/index.js';
import { type DxfReading, UNIT_WORDS } from '../../sheet/index.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { whoAsks } from '../guard.js';
import { HttpError } from '../httpError.js';
import { picturedRefusals, readSeconds } from '../limits.js';
import type { Upload } from '../uploads.js';

/** Parts taken in: typed in, out of a solid's file, out of a flat drawing, which may also be looked at alone. */
export const takeInRoutes = (app: FastifyInstance, { store, uploads, inTurn }: Context): void => {
  const ofSolid = async (file: Upload, gone: AbortSignal, request: FastifyRequest, reply: FastifyReply): Promise<FastifyReply> => {
    const told = solidOf(file);
    const intake = await inTurn(() => readStep(file.bytes, file.name, { seconds: readSeconds, signal: gone, ...told }));
    if (gone.aborted) return reply; // nobody is there to answer, and what nobody asked for any longer is not kept
    const refused = intake.refused.map(({ index, name, code, sentence, faces, measure }) => ({ index, ...(name === undefined ? {} : { name }), code, sentence, faces, ...(measure === undefined ? {} : { measure }) }));
    const seen = intake.refused.map(({ outlines, sentence, unitDoubted }, i) => ({ ...refused[i]!, ...(unitDoubted ? { unitDoubted } : {}), ...(outlines === undefined || i >= picturedRefusals ? {} : { picture: pictureToSvg(refusalPicture(outlines, sentence), `refused-${i}`) }) }));
    if (intake.parts.length === 0) {
      const first = refused[0]?.sentence ?? 'The file holds no solid.';
      throw new HttpError(422, refused.length < 2 ? first : `None of the ${refused.length} solids is a part that can be bent; the first: ${first}`, { refused: seen });
    }
    const parts = await store.addReading({ file: { name: file.name, bytes: file.bytes }, parts: intake.parts.map(({ part }) => part), refused }, whoAsks(request));
    const alike = intake.parts.flatMap(({ sameAs }, i) => (sameAs === undefined ? [] : [{ id: parts[i]!.id, of: parts[intake.parts.findIndex(({ index }) => index === sameAs)]!.id }]));
    return reply.code(201).send({ parts, refused: seen, alike });
  };

  const readDrawing = ({ bytes, name }: Upload, told: DxfReading, signal: AbortSignal): Promise<DxfPartResult> => inTurn(() => readDxfAside(bytes, baseName(name), told, { signal }));

  app.post('/api/parts', async (request, reply) => {
    if (!request.isMultipart()) {
      const made = partOfProfile(checked(profileSchema, request.body));
      if (!made.ok) throw new HttpError(422, made.sentence);
      const part = await store.addPart(made.part, whoAsks(request));
      return reply.code(201).send({ parts: [part], refused: [] });
    }
    const { file, gone } = await uploads.take(request, reply, 'A part');
    if (!isDrawing(file)) return ofSolid(ended(file), gone, request, reply);
    const read = await readDrawing(file, toldOf(ended(file)), gone);
    if (gone.aborted) return reply;
    if (!read.ok) throw drawingFault(read);
    const parts = await store.addReading({ file: { name: file.name, bytes: file.bytes }, parts: [read.value.part], refused: [] }, whoAsks(request));
    return reply.code(201).send({ parts, refused: [] });
  });

  app.post('/api/drawings', async (request, reply) => {
    const { file, gone } = await uploads.take(request, reply, 'A drawing');
    if (!isDrawing(file)) throw new HttpError(415, `'${file.name}' is no DXF file by its name (.dxf).`);
    const told = toldOf(ended(file));
    const read = await readDrawing(file, told, gone);
    if (gone.aborted) return reply;
    return read.ok ? { seen: read.seen, told, part: read.value.part } : { seen: read.seen, told, failure: read.failure };
  });
};

const baseName = (fileName: string): string => fileName.replace(/\.[^.]*$/, '') || 'part';

const isDrawing = ({ name }: Upload): boolean => /\.dxf$/i.test(name);

/** One of a kind that is read, and not empty. */
const ended = (file: Upload): Upload => {
  if (!isDrawing(file) && !/\.(step|stp)$/i.test(file.name)) throw new HttpError(415, `'${file.name}' is no STEP or DXF file by its name (.step, .stp or .dxf).`);
  if (file.bytes.length === 0) throw new HttpError(422, `'${file.name}' is empty.`);
  return file;
};

/** The refusal of a drawing, with what was seen of it: layers and unit to choose by. */
const drawingFault = (read: Extract<DxfPartResult, { readonly ok: false }>): HttpError =>
  new HttpError(422, read.failure.sentence, { failure: read.failure, layers: read.seen.layers, unit: read.seen.unit });

const isUnit = (text: string): text is keyof typeof UNIT_WORDS => Object.hasOwn(UNIT_WORDS, text);

/** Of a solid: the inside radius of bends drawn sharp (mm), and the unit that its file is in, whatever it declares. */
const solidOf = ({ field }: Upload): Pick<ReadStepOptions, 'sharpRadius' | 'unit'> => {
  const [sharp, unit] = [field('sharpRadius') === undefined ? undefined : Number(field('sharpRadius')), field('unit')];
  if (unit !== undefined && !isUnit(unit)) throw new HttpError(400, `'unit' is one of ${Object.keys(UNIT_WORDS).join(', ')}.`);
  if (sharp !== undefined && !(sharp >= 0 && sharp <= 1000)) throw new HttpError(400, "'sharpRadius' is an inside radius in mm, from 0 to 1000.");
  return { ...(sharp === undefined ? {} : { sharpRadius: sharp }), ...(unit === undefined ? {} : { unit }) };
};

/** Of a flat drawing: what is told of it. */
const toldOf = ({ field }: Upload): DxfReading => {
  const text = field('told');
  if (text === undefined) return { from: 'dxf' };
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw new HttpError(400, "'told' is no JSON.");
  }
  return checked(dxfReadingSchema, data);
};

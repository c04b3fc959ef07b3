import type { FastifyInstance, FastifyReply } from 'fastify';
import { blankDxf, blankSvg, layoutPicture, partPicture, type Picture, pictureToSvg, reasonPicture, sectionPicture, setupSheetPdf, stepPicture, unfoldingPath } from '../../papers/index.js';
import { type Blank, blank, develop, ruleInWords } from '../../sheet/index.js';
import type { StoredPart, StoredTrial } from '../../store/index.js';
import type { Step } from '../../trial/index.js';
import type { Context } from '../context.js';
import { drawingPolicy, whoAsks } from '../guard.js';
import { found, HttpError } from '../httpError.js';
import { livePart } from './livePart.js';
import { revisionOf, ruleOf } from './rule.js';

interface ById { readonly Params: { readonly id: string } }
interface ByNumber { readonly Params: { readonly id: string; readonly n: string } }
interface OfPart { readonly Querystring: { readonly revision?: string; readonly rule?: string; readonly k?: string } }

/** Drawings and papers, made anew at each question from what is kept. */
export const paperRoutes = (app: FastifyInstance, { store }: Context): void => {
  const partOf = (id: string, query: OfPart['Querystring']): Promise<StoredPart> => livePart(store, id, revisionOf(query.revision));
  const trialOf = async (id: string): Promise<StoredTrial> => found(await store.trial(id), 'There is no such trial.');

  app.get<ById & OfPart>('/api/parts/:id/blank.dxf', async ({ params, query }, reply) => {
    const { part } = await partOf(params.id, query);
    const { flat, rule } = nominal(part, query);
    return download(reply, 'application/dxf', `${part.name} blank.dxf`).send(blankDxf(flat, { rule }));
  });

  app.get<ById & OfPart>('/api/parts/:id/blank.svg', async ({ params, query }, reply) => {
    const { flat, rule } = nominal((await partOf(params.id, query)).part, query);
    return svg(reply, blankSvg(flat, { rule }));
  });

  app.get<ById & OfPart>('/api/parts/:id/picture.svg', async ({ params, query }, reply) =>
    picture(reply, partPicture(develop((await partOf(params.id, query)).part, ruleOf(query)))));

  app.get<ById>('/api/trials/:id/setup-sheet.pdf', async (request, reply) => {
    const { trial, createdAt, partName, partRevision } = await trialOf(request.params.id);
    const pdf = await setupSheetPdf(trial, { date: createdAt.slice(0, 10), who: whoAsks(request), partName, revision: String(partRevision) });
    return reply.type('application/pdf').header('content-disposition', disposition('inline', `${partName} set-up sheet.pdf`)).send(Buffer.from(pdf));
  });

  app.get<ById>('/api/trials/:id/layout.svg', async ({ params }, reply) => picture(reply, layoutPicture((await trialOf(params.id)).trial)));
  app.get<ById>('/api/trials/:id/path.svg', async ({ params }, reply) => picture(reply, unfoldingPath((await trialOf(params.id)).trial)));

  app.get<ByNumber & { Querystring: { when?: string } }>('/api/trials/:id/steps/:n/picture.svg', async ({ params, query }, reply) => {
    const { when } = query;
    if (when !== 'before' && when !== 'after') throw new HttpError(400, `'when' is before or after, not '${when ?? ''}'.`);
    const { trial } = await trialOf(params.id);
    return picture(reply, stepPicture(trial, stepOf(trial.steps, params.n).number, when));
  });

  app.get<ByNumber>('/api/trials/:id/steps/:n/section.svg', async ({ params }, reply) => {
    const { trial } = await trialOf(params.id);
    return picture(reply, sectionPicture(trial, stepOf(trial.steps, params.n).number));
  });

  app.get<ByNumber>('/api/trials/:id/reasons/:n/picture.svg', async ({ params }, reply) => {
    const { trial } = await trialOf(params.id);
    const reason = found(trial.reasons[Number(params.n) - 1], `The trial has no reason ${params.n}.`);
    return picture(reply, found(reasonPicture(trial, reason) ?? undefined, 'This reason names no partial fold to draw.'));
  });
};

const nominal = (part: StoredPart['part'], query: OfPart['Querystring']): { readonly flat: Blank; readonly rule: string } => {
  const rule = ruleOf(query);
  const flat = blank(develop(part, rule));
  if (!flat.ok) throw new HttpError(422, flat.failure.sentence);
  return { flat: flat.value, rule: ruleInWords(rule) };
};

const stepOf = (steps: readonly Step[], n: string): Step => found(steps.find(({ number }) => String(number) === n), `The trial has no step ${n}.`);

const picture = (reply: FastifyReply, drawn: Picture): FastifyReply => svg(reply, pictureToSvg(drawn));

const svg = (reply: FastifyReply, text: string): FastifyReply =>
  reply.type('image/svg+xml').header('content-security-policy', drawingPolicy).send(text);

const download = (reply: FastifyReply, type: string, name: string): FastifyReply =>
  reply.type(type).header('content-disposition', disposition('attachment', name));

const disposition = (how: 'inline' | 'attachment', name: string): string => `${how}; filename*=UTF-8''${encodeURIComponent(name)}`;

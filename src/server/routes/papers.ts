import type { FastifyInstance, FastifyReply } from 'fastify';
import { foldShares } from '../../sheet/index.js';
import type { Context } from '../context.js';
import { disposition } from '../disposition.js';
import { drawingPolicy } from '../guard.js';
import { hashOf } from '../hashOf.js';
import { found, HttpError } from '../httpError.js';
import type { PaperTask } from '../paperTask.js';
import { toldToday } from '../today.js';
import { livePart } from './livePart.js';
import { revisionOf, ruleOf } from './rule.js';

interface ById { readonly Params: { readonly id: string } }
interface ByNumber { readonly Params: { readonly id: string; readonly n: string } }
interface OfPart { readonly Querystring: { readonly revision?: string; readonly rule?: string; readonly k?: string } }

/** Drawings and papers, made from what is kept. */
export const paperRoutes = (app: FastifyInstance, { store, desk, shop }: Context): void => {
  for (const [name, kind] of [['blank.dxf', 'blank.dxf'], ['blank.svg', 'blank.svg'], ['picture.svg', 'part']] as const) {
    app.get<ById & OfPart>(`/api/parts/:id/${name}`, async ({ params, query }, reply) => {
      const { part, revision } = await livePart(store, params.id, revisionOf(query.revision));
      const rule = ruleOf(query, part);
      const paper = await desk.make(`${params.id}/${revision}/${kind}/${JSON.stringify(rule)}`, { kind, part, rule });
      if (name !== 'blank.dxf') return svg(reply, paper as string);
      return reply.type('application/dxf').header('content-disposition', disposition('attachment', `${part.name} blank.dxf`)).send(paper);
    });
  }

  app.get<ById & { readonly Querystring: { readonly revision?: string; readonly fold?: string } }>('/api/parts/:id/part.step', async ({ params, query }, reply) => {
    const { part, revision } = await livePart(store, params.id, revisionOf(query.revision));
    const shares = foldShares(part, query.fold);
    if (!shares.ok) throw new HttpError(400, `'fold': ${shares.sentence}`);
    const paper = await desk.make(`${params.id}/${revision}/part.step/${shares.value.join()}`, { kind: 'part.step', part, shares: shares.value });
    return reply.type('model/step').header('content-disposition', disposition('attachment', `${part.name}.step`)).send(paper);
  });

  app.get<ById>('/api/trials/:id/setup-sheet.pdf', async (request, reply) => {
    // whoever ran the trial answers for its sheet, on its date
    const stored = found(await store.trial(request.params.id), 'There is no such trial.');
    const { id, createdAt, by, partName, partRevision } = stored;
    const trial = toldToday(stored, await shop.current());
    const options = { date: createdAt.slice(0, 10), who: by, partName, revision: String(partRevision) };
    const pdf = await desk.make(`${id}/setup sheet/${hashOf(trial.warnings)}`, { kind: 'setup sheet', trial, options });
    return reply.type('application/pdf').header('content-disposition', disposition('inline', `${partName} set-up sheet.pdf`))
      .send(Buffer.from(pdf as Uint8Array));
  });

  const drawing = async (reply: FastifyReply, trialId: string, rest: PaperRest): Promise<FastifyReply> => {
    const { id, trial } = found(await store.trial(trialId), 'There is no such trial.');
    if ('step' in rest) found(trial.steps.find(({ number }) => number === rest.step), `The trial has no step ${rest.step}.`);
    return svg(reply, (await desk.make(`${id}/${JSON.stringify(rest)}`, { ...rest, trial })) as string);
  };

  app.get<ById>('/api/trials/:id/layout.svg', ({ params }, reply) => drawing(reply, params.id, { kind: 'layout' }));
  app.get<ById>('/api/trials/:id/path.svg', ({ params }, reply) => drawing(reply, params.id, { kind: 'path' }));
  app.get<ByNumber & { Querystring: { when?: string } }>('/api/trials/:id/steps/:n/picture.svg', ({ params, query }, reply) => {
    const { when } = query;
    if (when !== 'before' && when !== 'after') throw new HttpError(400, `'when' is before or after, not '${when ?? ''}'.`);
    return drawing(reply, params.id, { kind: when, step: numberOf(params.n) });
  });
  app.get<ByNumber>('/api/trials/:id/steps/:n/section.svg', ({ params }, reply) =>
    drawing(reply, params.id, { kind: 'section', step: numberOf(params.n) }));
  app.get<ByNumber>('/api/trials/:id/reasons/:n/picture.svg', ({ params }, reply) =>
    drawing(reply, params.id, { kind: 'reason', number: numberOf(params.n) }));
};

/** What is asked for, beside the trial. */
type PaperRest =
  | { readonly kind: 'layout' | 'path' }
  | { readonly kind: Extract<PaperTask, { step: number }>['kind']; readonly step: number }
  | { readonly kind: 'reason'; readonly number: number };

const numberOf = (text: string): number => {
  if (!/^[1-9]\d{0,4}$/.test(text)) throw new HttpError(404, `There is no number '${text}'; they count from 1.`);
  return Number(text);
};

const svg = (reply: FastifyReply, text: string): FastifyReply =>
  reply.type('image/svg+xml').header('content-security-policy', drawingPolicy).send(text);

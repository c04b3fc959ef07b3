import type { FastifyInstance, FastifyReply } from 'fastify';
import { z } from 'zod';
import { type DayPlan, type OneLayout, type OneLayoutAnswer, answerInWords, cheapestOfAll, cheapestWords, nothingCostsLess, dayPlan } from '../../fit/index.js';
import { reportWordsOf, siteMachines } from '../../papers/index.js';
import type { StoredTrial } from '../../store/index.js';
import type { Trial, TrialInput } from '../../trial/index.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import type { FitView } from '../fitTask.js';
import { whoAsks } from '../guard.js';
import { found, HttpError } from '../httpError.js';
import { type ReportOfFit, reportOfFit } from '../reportOfFit.js';
import { livePart } from './livePart.js';

/** Characters of what is typed for a paper. */
const typedLimit = 2000;
const typed = z.string().max(typedLimit).optional();
const reportSchema = z.strictObject({ walk: z.string().optional(), buyer: typed, who: typed, delivery: typed, warranty: typed, remarks: typed });
const count = z.coerce.number().int().min(0).max(1000);
const daySchema = z.strictObject({ trials: z.string().min(1), pieces: count.min(1).default(1), spares: count.default(2), buyer: typed, who: typed, layout: z.literal('one').optional(), bed: z.coerce.number().int().min(1).max(20_000).optional() });

interface ById { readonly Params: { readonly id: string } }

/** The day as pages show it: each stop with its trial's and its part's id, and each part left out with its trial's. */
interface DayAnswer extends DayPlan {
  readonly trialIds: readonly string[];
  readonly partIds: readonly string[];
  readonly leftIds: readonly string[];
}

/** What the buyer takes home and what the demonstrator prepares: the report of a fit, and the plan of a day. */
export const handoutRoutes = (app: FastifyInstance, { store, fits, desk, layouts, shop }: Context): void => {
  const today = (): string => new Date().toISOString().slice(0, 10);

  const report = async (id: string, query: unknown): Promise<ReportOfFit & { readonly view: FitView }> => {
    const { walk, ...said } = checked(reportSchema, query);
    const view = found(await fits.view(id), 'There is no such fit; one goes when a part of it is deleted.');
    const written = Object.fromEntries(Object.entries({ date: today(), who: view.by, ...said }).filter(([, words]) => words !== undefined && words !== ''));
    return { view, ...(await reportOfFit(store, view, await fits.columns(id), walk, written)) };
  };

  app.get<ById>('/api/fits/:id/report', async (request) => {
    const { data, walkTrialId, view } = await report(request.params.id, request.query);
    const { board, metal, quantity, racks, typed: said, demonstrated, parts } = data;
    return {
      fitId: view.id, answer: answerInWords(board), cheapest: cheapestOfAll(board), all: board.cheapest?.cannot.length === 0,
      alone: board.alone.map((alone) => cheapestWords(alone, board.parts, nothingCostsLess(), true)),
      metal, quantity, racks, typed: said, walkTrialId, demonstrated, ...reportWordsOf(data),
      parts: view.parts.map((part, p) => ({ ...part, demo: parts[p]!.demo })), machines: board.machines,
      sums: view.sums, options: board.options,
      cells: view.cells.map((row, p) => row.map((cell, c) => ({ ...board.cells[p]![c]!, trialId: cell?.trialId ?? null }))),
      site: siteMachines(data).map(({ name, site, price, currency, demo }) => ({ name, site, price, currency, demo })),
    };
  });

  app.get<ById>('/api/fits/:id/report.pdf', async (request, reply) => {
    const { data, view } = await report(request.params.id, request.query);
    const key = JSON.stringify([view.id, view.done, 'report', data.typed, data.walk?.sheet.part.name, data.walk?.machine.id, data.demonstrated.map(({ records }) => records.map(({ id }) => id))]);
    return pdf(reply, await desk.make(key, { kind: 'report', data }), 'buyer\'s report.pdf');
  });

  /** The parts of these trials planned again onto one layout of their machine; of the same question one answer is kept. */
  const onOneLayout = async (stored: readonly StoredTrial[], pieces: number, bed: number | undefined): Promise<OneLayout> => {
    const { rack, deductions, metals } = await shop.current();
    const { machine } = stored[0]!.trial;
    const inputs: TrialInput[] = [];
    for (const { partId, partRevision, metalId } of stored) {
      const { part } = await livePart(store, partId, partRevision);
      const metal = found(metals.find(({ id }) => id === metalId), `There is no metal '${metalId}'.`);
      inputs.push({ part, machine, rack, metal, quantity: pieces, ...(deductions.length > 0 ? { deductions } : {}) });
    }
    const key = JSON.stringify(['one layout', stored.map(({ id }) => id), pieces, bed, rack, deductions, inputs.map(({ metal }) => metal)]);
    const answer = JSON.parse((await layouts.make(key, { kind: 'one layout', inputs, ...(bed === undefined ? {} : { bed }) })) as string) as OneLayoutAnswer;
    if (!answer.ok) throw new HttpError(422, answer.sentence);
    return answer.value;
  };

  const day = async (query: unknown): Promise<{ readonly plan: DayPlan; readonly trials: readonly Trial[]; readonly of: readonly StoredTrial[]; readonly buyer: string }> => {
    const { trials: asked, pieces, spares, buyer = '', layout, bed } = checked(daySchema, query);
    const ids = asked.split(',').filter((id) => id !== '');
    const stored: StoredTrial[] = [];
    for (const id of ids) stored.push(found(await store.trial(id), `There is no trial '${id}'.`));
    const { rack } = await shop.current();
    const apart = dayPlan({ trials: stored.map(({ trial }) => trial), rack, pieces, spares });
    if (!apart.ok) throw new HttpError(422, apart.sentence);
    if (layout === undefined) return { plan: apart.value, trials: stored.map(({ trial }) => trial), of: stored, buyer };
    // what is not made stands on no layout; it is told after the others
    const [made, left] = [stored.filter(({ trial }) => trial.verdict === 'makes'), stored.filter(({ trial }) => trial.verdict !== 'makes')];
    const shared = await onOneLayout(made, pieces, bed);
    const on = made.filter((_, i) => shared.without.every(({ input }) => input !== i));
    const trials = [...shared.trials, ...shared.without.map(({ trial }) => trial), ...left.map(({ trial }) => trial)];
    const planned = dayPlan({ trials, rack, pieces, spares, layout: shared });
    if (!planned.ok) throw new HttpError(422, planned.sentence);
    return { plan: planned.value, trials, of: [...on, ...shared.without.map(({ input }) => made[input]!), ...left], buyer };
  };

  app.get('/api/day-plan', async ({ query }): Promise<DayAnswer> => {
    const { plan, of } = await day(query);
    const stops = plan.stops.map(({ trial }) => of[trial]!);
    return { ...plan, trialIds: stops.map(({ id }) => id), partIds: stops.map(({ partId }) => partId), leftIds: plan.left.map(({ trial }) => of[trial]!.id) };
  });

  app.get('/api/day-plan/layout.svg', async ({ query }, reply) => {
    const { plan, trials } = await day(query);
    if (!plan.layout) throw new HttpError(422, 'These parts stand on no layout of their own: ask with layout=one.');
    const key = JSON.stringify(['shared layout', trials.map((t) => [t.sheet.part.name, t.stations, t.steps.map(({ station, place }) => [station, place])])]);
    return reply.type('image/svg+xml').send(await desk.make(key, { kind: 'shared layout', trials: trials.filter(({ verdict }) => verdict === 'makes') }));
  });

  app.get('/api/day-plan.pdf', async (request, reply) => {
    const { plan, trials, of, buyer } = await day(request.query);
    const { who = '' } = checked(daySchema, request.query);
    const options = { date: today(), who: who.trim() === '' ? whoAsks(request) : who.trim(), buyer };
    const [{ blanks }] = plan.stops as readonly [DayPlan['stops'][number]];
    return pdf(reply, await desk.make(JSON.stringify(['day', of.map(({ id }) => id), blanks.pieces, blanks.spares, options, plan.layout ?? null]), { kind: 'day plan', plan, trials, options }), 'day plan.pdf');
  });
};

const pdf = (reply: FastifyReply, bytes: unknown, name: string): FastifyReply =>
  reply.type('application/pdf').header('content-disposition', `inline; filename*=UTF-8''${encodeURIComponent(name)}`).send(Buffer.from(bytes as Uint8Array));

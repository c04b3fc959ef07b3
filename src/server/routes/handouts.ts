import type { FastifyInstance, FastifyReply } from 'fastify';
import { z } from 'zod';
import { type DayPlan, answerInWords, cheapestOfAll, cheapestWords, nothingCostsLess } from '../../fit/index.js';
import { reportWordsOf, siteMachines } from '../../papers/index.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { dayOfTrials, type PlannedDay } from '../dayOfTrials.js';
import type { FitView } from '../fitTask.js';
import { disposition } from '../disposition.js';
import { whoAsks } from '../guard.js';
import { hashOf } from '../hashOf.js';
import { found, HttpError } from '../httpError.js';
import { type ReportOfFit, reportOfFit } from '../reportOfFit.js';
import { fitToday, toldToday } from '../today.js';

/** Characters of what is typed for a paper. */
const typedLimit = 2000;
const typed = z.string().max(typedLimit).optional();
const reportSchema = z.strictObject({ walk: z.string().optional(), buyer: typed, who: typed, delivery: typed, warranty: typed, remarks: typed });
const count = z.coerce.number().int().min(0).max(1000);
const daySchema = z.strictObject({ trials: z.string().min(1), pieces: count.min(1).default(1), spares: count.default(2), buyer: typed, who: typed, layout: z.literal('one').optional(), bed: z.coerce.number().int().min(1).max(20_000).optional() });

/** The set-up sheet of one trial's part on the layout that the day's parts share. */
const sheetSchema = daySchema.extend({ trial: z.string() });

interface ById { readonly Params: { readonly id: string } }

/** The day as pages show it: each stop with its trial's and its part's id, and each part left out with its trial's. */
interface DayAnswer extends DayPlan {
  readonly trialIds: readonly string[];
  readonly partIds: readonly string[];
  readonly leftIds: readonly string[];
}

/** What the buyer takes home and what the demonstrator prepares: the report of a fit, and the plan of a day. */
export const handoutRoutes = (app: FastifyInstance, context: Context): void => {
  const { store, fits, desk, shop } = context;
  const today = (): string => new Date().toISOString().slice(0, 10);

  const report = async (id: string, query: unknown): Promise<ReportOfFit & { readonly view: FitView }> => {
    const { walk, ...said } = checked(reportSchema, query);
    const view = fitToday(found(await fits.view(id), 'There is no such fit; one goes when a part of it is deleted.'), await shop.current());
    const written = Object.fromEntries(Object.entries({ date: today(), who: view.by, ...said }).filter(([, words]) => words !== undefined && words !== ''));
    return { view, ...(await reportOfFit(store, view, await fits.columns(id), walk, written)) };
  };

  app.get<ById>('/api/fits/:id/report', async (request) => {
    const { data, walkTrialId, view } = await report(request.params.id, request.query);
    const { board, metal, quantity, racks, typed: said, demonstrated, parts } = data;
    return {
      fitId: view.id, answer: answerInWords(board), cheapest: cheapestOfAll(board), all: board.cheapest?.cannot.length === 0,
      alone: board.alone.map((alone) => cheapestWords(alone, board, nothingCostsLess(), true)),
      metal, quantity, racks, typed: said, walkTrialId, demonstrated, ...reportWordsOf(data),
      parts: view.parts.map((part, p) => ({ ...part, demo: parts[p]!.demo })), machines: board.machines,
      sums: view.sums, options: board.options,
      cells: view.cells.map((row, p) => row.map((cell, c) => ({ ...board.cells[p]![c]!, trialId: cell?.trialId ?? null }))),
      site: siteMachines(data).map(({ name, site, price, currency, demo }) => ({ name, site, price, currency, demo })),
    };
  });

  app.get<ById>('/api/fits/:id/report.pdf', async (request, reply) => {
    const { data } = await report(request.params.id, request.query);
    const task = { kind: 'report', data } as const;
    return pdf(reply, await desk.make(hashOf(task), task), 'buyer\'s report.pdf');
  });

  const day = async (query: unknown): Promise<PlannedDay & { readonly buyer: string; readonly who: string }> => {
    const { trials, buyer = '', who = '', ...asked } = checked(daySchema, query);
    if (asked.bed !== undefined && asked.layout === undefined) throw new HttpError(400, "'bed' is the length that one layout may take: it goes with layout=one.");
    return { ...(await dayOfTrials({ trialIds: trials.split(',').filter((id) => id !== ''), ...asked }, context)), buyer, who: who.trim() };
  };

  app.get('/api/day-plan', async ({ query }): Promise<DayAnswer> => {
    const { plan, of } = await day(query);
    const stops = plan.stops.map(({ trial }) => of[trial]!);
    return { ...plan, trialIds: stops.map(({ id }) => id), partIds: stops.map(({ partId }) => partId), leftIds: plan.left.map(({ trial }) => of[trial]!.id) };
  });

  app.get('/api/day-plan/layout.svg', async ({ query }, reply) => {
    const { plan, trials } = await day(query);
    if (!plan.layout) throw new HttpError(422, 'These parts stand on no layout of their own: ask with layout=one.');
    const task = { kind: 'shared layout', trials: trials.filter(({ verdict }) => verdict === 'makes') } as const;
    return reply.type('image/svg+xml').send(await desk.make(hashOf(task), task));
  });

  app.get('/api/day-plan/setup-sheet.pdf', async (request, reply) => {
    const { trial: id, ...asked } = checked(sheetSchema, request.query);
    const { trials, of, who } = await day({ ...asked, layout: 'one' });
    const k = of.findIndex((stored) => stored.id === id);
    const { partName, partRevision } = found(of[k], `The day has no trial '${id}'.`);
    const trial = toldToday(of[k]!, await shop.current(), trials[k]!);
    const task = { kind: 'setup sheet', trial, options: { date: today(), who: who === '' ? whoAsks(request) : who, partName, revision: String(partRevision) } } as const;
    return pdf(reply, await desk.make(hashOf(task), task), `${partName} set-up sheet on one layout.pdf`);
  });

  app.get('/api/day-plan.pdf', async (request, reply) => {
    const { plan, trials, buyer, who } = await day(request.query);
    const task = { kind: 'day plan', plan, trials, options: { date: today(), who: who === '' ? whoAsks(request) : who, buyer } } as const;
    return pdf(reply, await desk.make(hashOf(task), task), 'day plan.pdf');
  });
};

const pdf = (reply: FastifyReply, bytes: unknown, name: string): FastifyReply =>
  reply.type('application/pdf').header('content-disposition', disposition('inline', name)).send(Buffer.from(bytes as Uint8Array));

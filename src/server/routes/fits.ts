import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { type FitColumn, fitColumns, fitRows } from '../../fit/index.js';
import { asDrawn, csvOf, parseFloor, parseRack } from '../../shop/index.js';
import type { MadeWith } from '../../store/index.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { eventStream } from '../eventStream.js';
import { madeWithKey } from '../fitDesk.js';
import { type FitSummary, type FitView, fitSummary } from '../fitTask.js';
import { whoAsks } from '../guard.js';
import { found, HttpError } from '../httpError.js';
import { cellSeconds, fitBodyLimit, mostCells, mostPlanSeconds } from '../limits.js';
import type { Shop } from '../shopKeeper.js';
import { fitToday } from '../today.js';
import { livePart } from './livePart.js';

interface ById { readonly Params: { readonly id: string } }

const askedSchema = z.strictObject({
  partIds: z.array(z.string()).min(1).max(1000),
  /** Machines of the floor, or all of them. */
  machineIds: z.union([z.literal('all'), z.array(z.string()).min(1).max(100)]),
  metalId: z.string(),
  quantity: z.int().min(1).max(1_000_000),
  /** s of search for each cell. */
  seconds: z.number().min(1).max(mostPlanSeconds).optional(),
  toleranceClass: z.enum(['f', 'm', 'c', 'v']).nullable().optional(),
  remedies: z.boolean().optional(),
  /** Work out what each option of the machines buys. */
  options: z.boolean().optional(),
  /** Ids of machines that the buyer has already. */
  owned: z.array(z.string()).optional(),
  /** What the buyer has: `machines` and `rack` as `machines --json` and `tools --json` print them. */
  buyer: z.strictObject({ machines: z.unknown().optional(), rack: z.unknown().optional() }).optional(),
});

/** s of search for each cell that is tried again. */
const againSchema = z.strictObject({ seconds: z.number().min(1).max(mostPlanSeconds) });

type Told = NonNullable<z.output<typeof askedSchema>['buyer']>;

/** What the buyer handed in, checked as strictly as our own floor and rack. */
const buyersOwn = (told: Told) => {
  const machines = told.machines === undefined ? undefined : parseFloor(asDrawn(told.machines));
  if (machines && !machines.ok) throw new HttpError(422, `The buyer's machines: ${machines.fault.sentence}`);
  const rack = told.rack === undefined ? undefined : parseRack(asDrawn(told.rack));
  if (rack && !rack.ok) throw new HttpError(422, `The buyer's tools: ${rack.fault.sentence}`);
  return { ...(machines?.ok && { machines: machines.value }), ...(rack?.ok && { rack: rack.value }) };
};

/** Of what the buyer brought there is no revision. */
const madeWithOf = ({ whose, machine, rack }: FitColumn, metalId: string, known: Shop['madeWith']): MadeWith => ({
  ...known(machine.id, rack.id, metalId), ...(whose === 'ours' ? {} : { rackId: null, rackRevision: null }), ...(whose === 'the buyer\'s' ? { machineRevision: null, conditionRevision: null } : {}),
});

export const fitRoutes = (app: FastifyInstance, { store, fits, shop }: Context): void => {
  app.post('/api/fits', { bodyLimit: fitBodyLimit }, async (request, reply) => {
    const asked = checked(askedSchema, request.body);
    const { machines, rack, madeWith, deductions, metals } = await shop.current();
    const wanted = asked.machineIds === 'all' ? machines : asked.machineIds.map((id) => found(machines.find((m) => m.id === id), `There is no machine '${id}' on the floor.`));
    const twice = wanted.find(({ id }, k) => wanted.findIndex((m) => m.id === id) !== k);
    if (twice) throw new HttpError(400, `The machine '${twice.id}' is named twice in 'machineIds'.`);
    for (const id of asked.owned ?? []) if (!wanted.some((m) => m.id === id)) throw new HttpError(400, `'owned' names '${id}', which is no machine of this fit.`);
    const metal = found(metals.find(({ id }) => id === asked.metalId), `There is no metal '${asked.metalId}'.`);
    const columns = fitColumns(wanted, rack, asked.buyer ? buyersOwn(asked.buyer) : {});
    const parts = [];
    for (const id of new Set(asked.partIds)) parts.push(await livePart(store, id));
    if (parts.length * columns.length > mostCells) throw new HttpError(400, `${parts.length} parts in ${columns.length} columns are ${parts.length * columns.length} cells; ${mostCells} are the most of one fit.`);
    const view = await fits.ask({
      madeWith: Object.fromEntries(columns.map((column) => [madeWithKey(column), madeWithOf(column, metal.id, madeWith)])),
      parts, columns, metal, deductions, quantity: asked.quantity, seconds: asked.seconds ?? cellSeconds, owned: asked.owned ?? [], options: asked.options ?? true,
      asked: { remedies: asked.remedies ?? true, toleranceClass: asked.toleranceClass === undefined ? 'c' : asked.toleranceClass },
    }, whoAsks(request));
    return reply.code(202).send(fitSummary(view));
  });

  app.post<ById>('/api/fits/:id/again', async (request, reply) => {
    const { seconds } = checked(againSchema, request.body);
    return reply.code(202).send(fitSummary(fitOr404(await fits.again(request.params.id, seconds, whoAsks(request)))));
  });

  app.get('/api/fits', async () => ({ fits: await fits.list() }));

  app.get<ById>('/api/fits/:id', async ({ params }) => fitToday(fitOr404(await fits.view(params.id)), await shop.current()));

  app.get<ById>('/api/fits/:id/board.csv', async ({ params }, reply) => {
    const view = fitOr404(await fits.view(params.id));
    return reply.type('text/csv; charset=utf-8').header('content-disposition', `attachment; filename="fit board ${view.id}.csv"`).send(csvOf(fitRows(view)));
  });

  app.post<ById>('/api/fits/:id/stop', async ({ params }) => {
    const before = fitOr404(await fits.view(params.id));
    if (before.endedAt !== null) throw new HttpError(409, `The fit has ended already (${before.state}).`);
    await fits.stop(params.id);
    return fitSummary(fitOr404(await fits.view(params.id)));
  });

  app.get<ById>('/api/fits/:id/events', ({ params }, reply) =>
    eventStream<FitSummary>(
      reply, (push) => fits.watch(params.id, (view) => push(fitSummary(view))), ({ endedAt }) => endedAt !== null,
      async () => fitSummary(fitOr404(await fits.view(params.id))),
    ));
};

const fitOr404 = (view: FitView | undefined): FitView => found(view, 'There is no such fit; one goes when a part of it is deleted.');

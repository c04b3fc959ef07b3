import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import type { StoredTrial } from '../../store/index.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { whoAsks } from '../guard.js';
import { found, HttpError } from '../httpError.js';
import { mostPlanSeconds } from '../limits.js';
import { standsStill } from '../../shop/index.js';
import { bewareToday } from '../today.js';
import { livePart } from './livePart.js';

interface ById { readonly Params: { readonly id: string } }

/** A trial as the API shows it. */
export interface TrialView extends StoredTrial {
  /** Why nothing is to be bent on its machine for now, as the floor says today; a sentence each. */
  readonly standsStill: readonly string[];
}

const askedSchema = z.strictObject({
  partId: z.string(),
  /** A machine of the floor, or all of them. */
  machineId: z.string(),
  metalId: z.string(),
  /** The rack to take tools from; the first one when absent. */
  rackId: z.string().optional(),
  quantity: z.int().min(1).max(1_000_000),
  /** Class of ISO 2768-1 that every dimension must hold that has no tolerance of its own; none when absent. */
  toleranceClass: z.enum(['f', 'm', 'c', 'v']).optional(),
  /** s of search. */
  seconds: z.number().min(1).max(mostPlanSeconds).optional(),
  /** The shop's measured deductions are taken where they fit; 'left out' plans by the calculation alone. */
  measured: z.enum(['taken', 'left out']).default('taken'),
});

export const trialRoutes = (app: FastifyInstance, { store, jobs, shop }: Context): void => {
  app.post('/api/trials', async (request, reply) => {
    const asked = checked(askedSchema, request.body);
    const part = await livePart(store, asked.partId);
    const { machines, racks, rack: first, deductions, metals, madeWith } = await shop.current();
    const rack = asked.rackId === undefined ? first : found(racks.find(({ id }) => id === asked.rackId), `There is no rack '${asked.rackId}'.`);
    const chosen = asked.machineId === 'all' ? machines : machines.filter((machine) => machine.id === asked.machineId);
    if (chosen.length === 0) throw new HttpError(404, `There is no machine '${asked.machineId}' on the floor.`);
    const metal = found(metals.find(({ id }) => id === asked.metalId), `There is no metal '${asked.metalId}'.`);
    const measured = asked.measured === 'taken' && deductions.length > 0;
    const records = await jobs.ask(chosen.map((machine) => ({
      partId: part.id, partRevision: part.revision, machineId: machine.id, metalId: metal.id, quantity: asked.quantity,
      machine, metal, rack, madeWith: { ...madeWith(machine.id, rack.id, metal.id), ...(measured ? {} : { deductionsRevision: null }) },
      measured: asked.measured, ...(measured ? { deductions } : {}), ...(asked.seconds === undefined ? {} : { seconds: asked.seconds }),
      ...(asked.toleranceClass === undefined ? {} : { toleranceClass: asked.toleranceClass }),
    })), whoAsks(request));
    return reply.code(202).send({ jobs: records.map(({ id, machineId }) => ({ jobId: id, machineId })) });
  });

  app.get<{ Querystring: { partId?: string } }>('/api/trials', async ({ query }) =>
    ({ trials: await store.trials(query.partId === undefined ? {} : { partId: query.partId }) }));

  app.get<ById>('/api/trials/:id', async ({ params }): Promise<TrialView> => {
    const stored = found(await store.trial(params.id), 'There is no such trial.');
    return { ...stored, standsStill: standsStill({ beware: bewareToday(stored, await shop.current()) }) };
  });

  app.get<ById>('/api/trials/:id/defect.json', async ({ params }, reply) => {
    const text = found(await store.defect(params.id), 'This trial has no defect file: its plan was not rejected.');
    return reply.type('application/json').header('content-disposition', `attachment; filename="defect-${params.id}.json"`).send(text);
  });
};

import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import type { EnvelopeView } from '../envelopeDesk.js';
import { found } from '../httpError.js';

const schema = z.strictObject({ metalId: z.string().default('dc01') });

/** What a machine of the floor reaches in a metal; asked for the first time it begins to be worked out. */
export const envelopeRoutes = (app: FastifyInstance, { envelopes, shop }: Context): void => {
  app.get<{ readonly Params: { readonly id: string } }>('/api/machines/:id/envelope', async ({ params, query }): Promise<EnvelopeView> => {
    const { metalId } = checked(schema, query);
    const { machines, rack, metals, madeWith } = await shop.current();
    const machine = found(machines.find(({ id }) => id === params.id), `There is no machine '${params.id}' on the floor.`);
    const metal = found(metals.find(({ id }) => id === metalId), `There is no metal '${metalId}'.`);
    return envelopes.look(JSON.stringify([machine.id, metalId, madeWith(machine.id, rack.id, metalId)]), machine, rack, metal);
  });
};

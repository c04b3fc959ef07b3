import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { hashOf } from '../hashOf.js';
import { found } from '../httpError.js';

const mm = z.number().positive().max(12_000);

const askedSchema = z.strictObject({
  metalId: z.string(),
  thickness: mm.max(50),
  /** mm of bend, for the force in all. */
  length: mm,
  /** Degrees, released. */
  bendAngle: z.number().min(1).max(180),
  /** mm, as drawn, and the shortest flange, outside. */
  insideRadius: z.number().min(0).max(500).exactOptional(),
  flange: mm.exactOptional(),
  /** Tools to take in place of the best pair. */
  punchId: z.string().exactOptional(),
  dieId: z.string().exactOptional(),
});

/** One bend at the counter: the rack's pairs ranked, one of them worked out, its curve. */
export const bendRoutes = (app: FastifyInstance, { shop, sums }: Context): void => {
  app.post('/api/bend', async (request, reply) => {
    const { metalId, ...asked } = checked(askedSchema, request.body);
    const { rack, deductions, metals } = await shop.current();
    const metal = found(metals.find(({ id }) => id === metalId), `There is no metal '${metalId}'.`);
    const task = { kind: 'bend', question: { metal, rack, deductions, ...asked } } as const;
    return reply.type('application/json').send(await sums.make(hashOf(task), task));
  });
};

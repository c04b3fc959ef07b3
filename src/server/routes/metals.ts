import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { measuredDeductions, stripBends } from '../../fit/index.js';
import { withDeductions } from '../../forming/index.js';
import { metalById } from '../../metal/index.js';
import { askedMetalData, askedMetalSchema, metalDataFromBends, metalName } from '../askedMetal.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { whoAsks } from '../guard.js';
import { found, HttpError } from '../httpError.js';
import { MEASURED_ID, parseMeasured } from '../measuredTable.js';
import type { OwnMetalData } from '../ownMetal.js';

interface ById { readonly Params: { readonly id: string } }

const askedSchema = z.union([
  ...askedMetalSchema.options,
  /** The test strips written down for this trial whose depth was read. */
  z.strictObject({ name: metalName, trialId: z.string() }),
]);
type Asked = z.output<typeof askedSchema>;

/** Metals to plan with: the list's, then the shop's own from a tensile test or from measured bends, each change a revision. */
export const metalRoutes = (app: FastifyInstance, { store, shop }: Context): void => {
  app.get('/api/metals', async () => ({ metals: (await shop.current()).metals, own: await store.shopEntries('metal') }));

  const dataOf = async (asked: Asked): Promise<OwnMetalData> => {
    if ('like' in asked) found(metalById(asked.like), `There is no metal '${asked.like}' in the list.`);
    const made = 'trialId' in asked ? await fromStrips(asked.name, asked.trialId) : askedMetalData(asked);
    if (!made.ok) throw new HttpError(422, made.sentence);
    return made.value;
  };

  const fromStrips = async (name: string, trialId: string): Promise<ReturnType<typeof metalDataFromBends>> => {
    const { trial } = found(await store.trial(trialId), 'There is no such trial.');
    const bends = stripBends(trial, await store.pieces(trialId));
    if (bends.length < 2) throw new HttpError(409, `${bends.length === 0 ? 'No test strip' : 'One test strip only'} with its depth has been written down for this trial; two tell the metal.`);
    // a batch of a metal that is the shop's own already is like the same metal of the list
    const own = await store.shopEntry('metal', trial.metal.id);
    return metalDataFromBends(name, own === undefined ? trial.metal.id : (own.data as OwnMetalData).like, bends.map(({ setup, ...bend }) => ({ ...bend, ...setup })));
  };

  /** What the strips of a trial tell of the deduction holds for the metal that they tell of, too. */
  const keepDeductions = async (trialId: string, metal: OwnMetalData, by: string): Promise<void> => {
    const { trial } = found(await store.trial(trialId), 'There is no such trial.');
    const rows = measuredDeductions(trial, await store.pieces(trialId)).map((row) => ({ ...row, metal: metal.id }));
    const before = await store.shopEntry('deductions', MEASURED_ID);
    const read = before === undefined ? undefined : parseMeasured(before.data);
    await shop.keep('deductions', { rows: withDeductions(read?.ok === true ? read.value.rows : [], rows) }, before?.revision ?? 0, `from the test strips of trial ${trialId}, for ${metal.name}`, by);
  };

  app.post('/api/metals', async (request, reply) => {
    const asked = checked(askedSchema, request.body);
    const data = await dataOf(asked);
    const before = await store.shopEntry('metal', data.id);
    const change = data.by === 'test bends' ? `from ${data.bends.length} test bends: ${data.words}`.slice(0, 200) : `from a tensile test: yield ${data.test.yield}, strength ${data.test.tensile} MPa, Ag ${data.test.uniformElongation} percent`;
    const kept = await shop.keep('metal', data, before?.revision ?? 0, change, whoAsks(request));
    if ('trialId' in asked) await keepDeductions(asked.trialId, data, whoAsks(request));
    return reply.code(201).send(kept);
  });

  app.delete<ById>('/api/metals/:id', async (request) => shop.takeOff('metal', request.params.id, whoAsks(request)));
};

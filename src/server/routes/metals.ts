import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { measuredDeductions, stripBends, withStripRows } from '../../fit/index.js';
import { metalById } from '../../metal/index.js';
import { askedMetalData, askedMetalSchema, type Made, type MeasuredBends, metalName } from '../askedMetal.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { whoAsks } from '../guard.js';
import { hashOf } from '../hashOf.js';
import { found, HttpError } from '../httpError.js';
import { MEASURED_ID, parseMeasured } from '../measuredTable.js';
import type { OwnMetalData } from '../ownMetal.js';
import type { ShopChange } from '../shopKeeper.js';

interface ById { readonly Params: { readonly id: string } }

const askedSchema = z.union([
  ...askedMetalSchema.options,
  /** The test strips written down for this trial whose depth was read. */
  z.strictObject({ name: metalName, trialId: z.string() }),
]);
type Asked = z.output<typeof askedSchema>;

/** Metals to plan with: the list's, then the shop's own from a tensile test or from measured bends, each change a revision. */
export const metalRoutes = (app: FastifyInstance, { store, shop, sums }: Context): void => {
  app.get('/api/metals', async () => ({ metals: (await shop.current()).metals, own: await store.shopEntries('metal') }));

  const dataOf = async (asked: Asked): Promise<OwnMetalData> => {
    if ('like' in asked) found(metalById(asked.like), `There is no metal '${asked.like}' in the list.`);
    const made = 'trialId' in asked ? await fromStrips(asked.name, asked.trialId)
      : 'test' in asked ? askedMetalData(asked) : await ofBends(asked.name, asked.like, asked.bends.map((bend) => ({ ...bend, ...asked.tools })));
    if (!made.ok) throw new HttpError(422, made.sentence);
    return made.value;
  };

  /** Finding a curve through bends takes a second. */
  const ofBends = async (name: string, like: string, bends: MeasuredBends): Promise<Made<OwnMetalData>> => {
    const task = { kind: 'metal of bends', name, like, bends } as const;
    return JSON.parse((await sums.make(hashOf(task), task)) as string) as Made<OwnMetalData>;
  };

  const fromStrips = async (name: string, trialId: string): Promise<Made<OwnMetalData>> => {
    const { trial } = found(await store.trial(trialId), 'There is no such trial.');
    const bends = stripBends(trial, await store.pieces(trialId));
    if (bends.length < 2) throw new HttpError(409, `${bends.length === 0 ? 'No test strip' : 'One test strip only'} with its depth has been written down for this trial; two tell the metal.`);
    // a batch of a metal that is the shop's own already is like the same metal of the list
    const own = await store.shopEntry('metal', trial.metal.id);
    return ofBends(name, own === undefined ? trial.metal.id : (own.data as OwnMetalData).like, bends.map(({ setup, ...bend }) => ({ ...bend, ...setup })));
  };

  /** What the strips of a trial tell of the deduction holds for the metal that they tell of, too. */
  const deductionsOf = async (trialId: string, metal: OwnMetalData): Promise<ShopChange> => {
    const { trial } = found(await store.trial(trialId), 'There is no such trial.');
    const rows = measuredDeductions(trial, await store.pieces(trialId)).map((row) => ({ ...row, metal: metal.id }));
    const before = await store.shopEntry('deductions', MEASURED_ID);
    const read = before === undefined ? undefined : parseMeasured(before.data);
    return { kind: 'deductions', data: { rows: withStripRows(read?.ok === true ? read.value.rows : [], rows) }, after: before?.revision ?? 0, change: `from the test strips of trial ${trialId}, for ${metal.name}` };
  };

  app.post('/api/metals', async (request, reply) => {
    const asked = checked(askedSchema, request.body);
    const data = await dataOf(asked);
    const before = await store.shopEntry('metal', data.id);
    const change = data.by === 'test bends' ? `from ${data.bends.length} test bends: ${data.words}`.slice(0, 200) : `from a tensile test: yield ${data.test.yield}, strength ${data.test.tensile} MPa, Ag ${data.test.uniformElongation} percent`;
    const [kept] = await shop.keepAll([
      { kind: 'metal', data, after: before?.revision ?? 0, change }, ...('trialId' in asked ? [await deductionsOf(asked.trialId, data)] : []),
    ], whoAsks(request));
    return reply.code(201).send(kept);
  });

  app.delete<ById>('/api/metals/:id', async (request) => shop.takeOff('metal', request.params.id, whoAsks(request)));
};

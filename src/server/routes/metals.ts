import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { measuredDeductions, stripBends } from '../../fit/index.js';
import { metalFromBends, withDeductions } from '../../forming/index.js';
import { metalById } from '../../metal/index.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { whoAsks } from '../guard.js';
import { found, HttpError } from '../httpError.js';
import { MEASURED_ID, parseMeasured } from '../measuredTable.js';
import { asMeasuredBend, bendReadingsSchema, bendToolsSchema, type OwnMetalData, ownMetalId, tensileTestSchema } from '../ownMetal.js';

interface ById { readonly Params: { readonly id: string } }

const name = z.string().trim().min(1).max(60);
const askedSchema = z.union([
  z.strictObject({ name, like: z.string(), test: tensileTestSchema }),
  z.strictObject({ name, like: z.string(), tools: bendToolsSchema, bends: bendReadingsSchema }),
  /** The test strips written down for this trial whose depth was read. */
  z.strictObject({ name, trialId: z.string() }),
]);
type Asked = z.output<typeof askedSchema>;

/** Metals to plan with: the list's, then the shop's own from a tensile test or from measured bends, each change a revision. */
export const metalRoutes = (app: FastifyInstance, { store, shop }: Context): void => {
  app.get('/api/metals', async () => ({ metals: (await shop.current()).metals, own: await store.shopEntries('metal') }));

  const fromBends = (named: { readonly id: string; readonly name: string }, likeId: string, bends: Extract<OwnMetalData, { by: 'test bends' }>['bends']): OwnMetalData => {
    const like = found(metalById(likeId), `There is no metal '${likeId}' in the list.`);
    const fitted = metalFromBends(bends.map(asMeasuredBend), like, named.id, named.name);
    if (!fitted.ok) throw new HttpError(422, fitted.sentence);
    return { ...named, like: likeId, by: 'test bends', bends, curve: fitted.value.metal.curve, words: fitted.value.words };
  };

  const dataOf = async (asked: Asked): Promise<OwnMetalData> => {
    const named = { id: ownMetalId(asked.name), name: asked.name };
    if ('test' in asked) return { ...named, like: asked.like, by: 'tensile test', test: asked.test };
    if ('tools' in asked) return fromBends(named, asked.like, asked.bends.map((bend) => ({ ...bend, ...asked.tools })));
    const { trial } = found(await store.trial(asked.trialId), 'There is no such trial.');
    const bends = stripBends(trial, await store.pieces(asked.trialId));
    if (bends.length < 2) throw new HttpError(409, `${bends.length === 0 ? 'No test strip' : 'One test strip only'} with its depth has been written down for this trial; two tell the metal.`);
    // a batch of a metal that is the shop's own already is like the same metal of the list
    const own = await store.shopEntry('metal', trial.metal.id);
    return fromBends(named, own === undefined ? trial.metal.id : (own.data as OwnMetalData).like, bends.map(({ setup, ...bend }) => ({ ...bend, ...setup })));
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

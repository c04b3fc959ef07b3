import { describe, expect, test } from 'vitest';
import { askedServer } from '../../test/askedServer.js';
import { airBend } from '../forming/index.js';
import { metalById, metalOfStrength } from '../metal/index.js';
import type { StoredTrial } from '../store/index.js';

const server = askedServer('own-metals', 'Ann');
const { ask, post, ended } = server;

interface Known { readonly metals: readonly { readonly id: string; readonly tensile: { readonly typical: number; readonly mark: string }; readonly yield: { readonly typical: number } }[]; readonly own: readonly { readonly id: string; readonly revision: number }[] }
const known = async (): Promise<Known> => (await ask('/api/metals')).body as Known;

const tried = async (partId: string, metalId: string): Promise<StoredTrial> => {
  const { jobs } = (await post('/api/trials', { partId, machineId: 'general', metalId, quantity: 1, seconds: 2 })).body as { jobs: { jobId: string }[] };
  return (await ask(`/api/trials/${(await ended(jobs[0]!.jobId)).trialId}`)).body as StoredTrial;
};

describe("the shop's own metals", () => {
  test('a tensile test makes one; the bend at the counter, a part and a trial take it, the trial names its revision; each change is a revision', async () => {
    expect((await known()).own).toEqual([]);
    const test2 = { yield: 300, tensile: 420, uniformElongation: 16 };
    expect(await post('/api/metals', { name: 'Coil 17', like: 'dc01', test: { ...test2, tensile: 415 } })).toMatchObject({ status: 201, body: { id: 'own-coil-17', revision: 1, by: 'Ann', change: 'from a tensile test: yield 300, strength 415 MPa, Ag 16 percent' } });
    expect(await post('/api/metals', { name: 'Coil 17', like: 'dc01', test: test2 })).toMatchObject({ status: 201, body: { id: 'own-coil-17', revision: 2 } });
    const { metals, own } = await known();
    expect(own).toMatchObject([{ id: 'own-coil-17', revision: 2 }]);
    expect(metals.at(-1)).toMatchObject({ id: 'own-coil-17', tensile: { typical: 420, mark: 'measured' }, yield: { typical: 300 } });

    const bend = async (metalId: string): Promise<number> =>
      ((await post('/api/bend', { metalId, thickness: 2, length: 1000, bendAngle: 90 })).body as { chosen: { force: number } }).chosen.force;
    // force goes about with the strength (textbook, CHECKS 2.1): DC01 is reckoned with 340 MPa or so here
    const strength = metalById('dc01')!.tensile.typical;
    expect((await bend('own-coil-17')) / (await bend('dc01')) / (420 / strength)).toBeCloseTo(1, 1);

    const partId = await server.addAngle('of coil 17');
    expect((await post(`/api/parts/${partId}/revisions`, { metal: 'own-coil-17' })).status).toBe(201);
    const stored = await tried(partId, 'own-coil-17');
    expect([stored.metalRevision, stored.trial.metal]).toMatchObject([2, { id: 'own-coil-17', name: 'Coil 17', density: metalById('dc01')!.density }]);
    expect((await tried(partId, 'dc01')).metalRevision).toBeNull();

    await server.restart();
    expect((await known()).metals.at(-1)).toMatchObject({ id: 'own-coil-17', tensile: { typical: 420 } });
    expect((await ask('/api/metals/own-coil-17', { method: 'DELETE' })).status).toBe(200);
    expect((await post('/api/bend', { metalId: 'own-coil-17', thickness: 2, length: 1000, bendAngle: 90 })).status).toBe(404);
  });

  test('two bends tell the strength: finite-element bends of a steel of 384 MPa (CHECKS 12, d45 and h63), told as bends of something like DC01', async () => {
    const tools = { thickness: 2, v: 16, vConvention: 'sharp', dieAngle: 84, shoulderRadius: 2, tipRadius: 1 };
    const d45 = { depth: 4.5, bendAngleReleased: 180 - 114.94, bendAngleUnderLoad: 180 - 113.04, peakForcePerLength: 130 };
    const h63 = { depth: 6.3, bendAngleReleased: 180 - 92.72, bendAngleUnderLoad: 180 - 90.63, peakForcePerLength: 130.1 };
    expect((await post('/api/metals', { name: 'FE steel', like: 'dc01', tools, bends: [d45, h63] })).status).toBe(201);
    // by hand: Swift 620, 0.18, 0.0108 has its greatest force at a strain of 0.18 - 0.0108, 620 * 0.18^0.18 / e^0.1692 = 384.4 MPa
    const { metals } = await known();
    expect(Math.abs(metals.find(({ id }) => id === 'own-fe-steel')!.tensile.typical / 384.4 - 1)).toBeLessThan(0.04);
    expect(await post('/api/metals', { name: 'one', like: 'dc01', tools, bends: [d45] })).toMatchObject({ status: 400 });
    expect(await post('/api/metals', { name: 'past', like: 'dc01', tools, bends: [d45, { ...h63, depth: 9 }] })).toMatchObject({ status: 422, body: { error: expect.stringContaining('bottoming') } });
    expect(await post('/api/metals', { name: 'x', like: 'none', tools, bends: [d45, h63] })).toMatchObject({ status: 404 });
  });

  test('strips written down at a trial make one too, with the deductions that they tell', async () => {
    const partId = await server.addAngle('stripped');
    const before = await tried(partId, 'dc01');
    const { trial } = before;
    const station = trial.stations[0]!;
    const die = trial.dies.find(({ id }) => id === station.die)!;
    const punch = trial.punches.find(({ id }) => id === station.punch)!;
    const here = `/api/trials/${before.id}`;
    expect(await post('/api/metals', { name: 'Batch 9', trialId: before.id })).toMatchObject({ status: 409, body: { error: expect.stringContaining('No test strip') } });
    // strips of a batch that is a tenth stronger than the list's, as they would be read
    const batch = metalOfStrength(metalById('dc01')!, 1.1);
    for (const bendAngle of [90, 60]) {
      const bent = airBend({ metal: batch, thickness: 1.5, v: die.v, vConvention: die.vConvention, dieAngle: die.includedAngle, shoulderRadius: die.shoulderRadius, tipRadius: punch.tipRadius, bendAngle });
      if (!bent.ok) throw new Error(bent.reason.sentence);
      const strip = { kind: 'strip', serial: `s${bendAngle}`, batch: 'b9', station: station.id, bendAngle, cut: 100, legs: bendAngle === 90 ? [51.4, 51.4] : [50 + bent.value.deduction / 2, 50 + bent.value.deduction / 2], thickness: 1.5, depth: bent.value.depth, underLoad: bent.value.bendAngleUnderLoad, force: bent.value.peakForcePerLength };
      expect((await post(`${here}/pieces`, strip)).status).toBe(201);
    }
    const kept = await post('/api/metals', { name: 'Batch 9', trialId: before.id });
    expect(kept).toMatchObject({ status: 201, body: { id: 'own-batch-9', change: expect.stringContaining('from 2 test bends') } });
    const { metals } = await known();
    expect(Math.abs(metals.find(({ id }) => id === 'own-batch-9')!.tensile.typical / metalById('dc01')!.tensile.typical / 1.1 - 1)).toBeLessThan(0.03);
    const after = await tried(partId, 'own-batch-9');
    expect([after.metalRevision, after.deductionsRevision]).toEqual([1, 1]);
    // 51.4 and 51.4 on 100 cut
    expect(after.trial.steps[0]!.deduction).toBeCloseTo(2.8, 9);
    expect(after.trial.steps[0]!.forming!.deduction.source).toBe('measured');
  });
});

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { openStore, type Store, type TrialAsked } from '../store/index.js';
import { planTrial, type Trial } from '../trial/index.js';
import { dayOfTrials } from './dayOfTrials.js';
import type { PaperTask } from './paperTask.js';
import type { Shop } from './shopKeeper.js';
import { trialSummary } from './trialSummary.js';

const metal = metalById('dc01')!;
const second = { ...demoRack(), id: 'second' };
const shop: Shop = {
  machines: demoFloor(), rack: { ...demoRack(), id: 'first', punches: [], dies: [] }, racks: [second], metals: [metal], unreadable: [],
  deductions: [{ metal: 'dc01', thickness: 1.5, v: 12, vConvention: 'sharp', tipRadius: 1, bendAngle: 90, deduction: 2.6, pieces: 1, spread: 0, note: '' }],
  madeWith: () => ({ machineRevision: 1, conditionRevision: null, rackId: 'first', rackRevision: 1, deductionsRevision: null, metalRevision: null }),
};
let dir: string;
let store: Store;
let trial: Trial;
let partId: string;
const tasks: PaperTask[] = [];
const context = {
  get store() { return store; }, shop: { current: async () => shop },
  layouts: { make: async (_: string, task: PaperTask) => (tasks.push(task), JSON.stringify({ ok: false, sentence: 'There is none.', trials: [] })) },
};

beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'brakewright-day-'));
  const opened = openStore(dir);
  if (!opened.ok) throw new Error(opened.sentence);
  ({ store } = opened);
  const part = profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] });
  if (!part.ok) throw new Error(part.failure.sentence);
  partId = (await store.addPart(part.value, 'ann')).id;
  const rack = { ...second, punches: second.punches.slice(0, 2), dies: second.dies.filter(({ v }) => v === 12) };
  trial = planTrial({ part: part.value, machine: demoFloor()[0]!, rack, metal, quantity: 1 });
});
afterAll(async () => {
  await store.close();
  rmSync(dir, { recursive: true, force: true });
});

const plain: TrialAsked = { toleranceClass: null, scribedLine: 'allowed', measured: 'taken' };
const kept = async (rackId: string | null, asked = plain): Promise<string> => (await store.addTrial({
  partId, partRevision: 1, metalId: metal.id, trial, madeWith: { ...shop.madeWith('', 'second', metal.id), rackId }, column: { whose: rackId === null ? 'the buyer\'s' : 'ours', option: null }, asked,
  summary: trialSummary(trial, false),
}, 'ann'))!.id;
const day = (trialIds: readonly string[], layout?: 'one') => dayOfTrials({ trialIds, pieces: 1, spares: 0, layout }, context);

it('the kit is looked for in the rack that the trials were planned with, of what a buyer brings in the trials', async () => {
  for (const rackId of ['second', null]) {
    const { plan } = await day([await kept(rackId)]);
    expect(plan.kit.length).toBeGreaterThan(0);
    expect(plan.kit.every(({ needed, atHand }) => atHand >= needed)).toBe(true);
  }
  // one that is taken off is not at hand
  expect((await day([await kept('gone')])).plan.kit.every(({ atHand }) => atHand === 0)).toBe(true);
  await expect(day([await kept('second'), await kept('first')])).rejects.toThrow("A day is laid out from one rack: angle was planned with the rack 'second', angle with the rack 'first'.");
});

it('one layout is asked for as the trials were, with their rack', async () => {
  await expect(day([await kept('second', { toleranceClass: 'm', scribedLine: 'refused', measured: 'left out' })], 'one')).rejects.toThrow('There is none.');
  await expect(day([await kept('second')], 'one')).rejects.toThrow('There is none.');
  const [strict, loose] = tasks.map((task) => (task.kind === 'one layout' ? task.inputs[0] : undefined));
  expect(strict).toMatchObject({ rack: { id: 'second' }, toleranceClass: 'm', limits: { scribedLine: 'refused' } });
  expect([strict?.deductions, loose?.deductions?.length, loose?.toleranceClass]).toEqual([undefined, 1, undefined]);
  await expect(day([await kept(null)], 'one')).rejects.toThrow("planned with the buyer's tools");
  await expect(day([await kept('gone')], 'one')).rejects.toThrow("The rack 'gone'");
});

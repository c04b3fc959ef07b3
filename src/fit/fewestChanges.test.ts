import { expect, it, vi } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { metalById } from '../metal/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import type { TrialInput } from '../trial/index.js';
import { fitTrial } from './fitTrial.js';
import { planJudged } from './planJudged.js';
import { remedyCandidates } from './remedyCandidates.js';

vi.setConfig({ testTimeout: 240_000 });

const now = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** The fewer tools, the fewer plans: what P14 asks, one punch more, and none of its own goosenecks. */
const few = ((): ReturnType<typeof demoRack> => {
  const rack = demoRack();
  return {
    ...rack, punches: rack.punches.filter(({ id }) => ['acute-30', 'flattening', 'straight-r1'].includes(id)),
    dies: rack.dies.filter(({ id }) => ['die-v8-30', 'anvil', 'die-v12-85'].includes(id)),
  };
})();

it('of changes that only help together none is told that is not needed: two hems and two flanges on a gauge of fixed height', async () => {
  const part = benchParts().find(({ id }) => id === 'P14')!.part;
  const input: TrialInput = { part, machine: demoFloor().find((m) => m.id === 'long-fixed-r')!, rack: few, metal: metalById('dc01')!, quantity: 50, toleranceClass: 'c' };
  const trial = await fitTrial(input, { remedies: true, toleranceClass: 'c' }, { now });
  const [remedy] = trial.remedies.filter(({ items }) => items!.length > 1);
  expect(remedy?.confirmed).toBe(true);
  expect(remedy!.sentence).not.toContain('not tried to the end');
  const candidates = remedyCandidates(input, [...trial.reasons, ...(trial.untold ?? [])]);
  const made = async (ids: readonly string[]): Promise<boolean> => {
    const chosen = ids.map((id) => candidates.find(({ item }) => item.id === id)!);
    for (const asked of chosen.reduce<readonly TrialInput[]>((questions, { apply }) => questions.flatMap(apply), [{ ...input, limits: { scribedLine: 'refused' } }])) {
      if ((await planJudged(asked, { now })).verdict !== 'makes') return false;
    }
    return true;
  };
  const ids = remedy!.items!.map(({ id }) => id);
  expect(await made(ids)).toBe(true);
  for (const left of ids) expect(await made(ids.filter((id) => id !== left)), `without ${left}`).toBe(false);
});

it('a part in two is tried however much was tried before it, and never joined at a hem', async () => {
  const part = benchParts().find(({ id }) => id === 'P14')!.part;
  const input: TrialInput = { part, machine: demoFloor().find((m) => m.id === 'general')!, rack: few, metal: metalById('dc01')!, quantity: 50 };
  const { verdict, remedies } = await fitTrial(input, { remedies: true }, { now });
  expect(verdict).toBe('makes with remedy');
  const seams = remedies.flatMap(({ items }) => items ?? []).filter(({ kind }) => kind === 'split').map(({ id }) => id);
  // b1 and b4 are its hems
  expect(seams).toHaveLength(1);
  expect(['split-b2', 'split-b3']).toContain(seams[0]);
});

import { expect, it } from 'vitest';
import { planAndProve } from '../src/fit/index.js';
import { metalById } from '../src/metal/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';
import { profilePart } from '../src/sheet/index.js';

const all = demoRack();
const rack = { ...all, dies: all.dies.filter((d) => ['die-v12-30', 'anvil'].includes(d.id)), punches: all.punches.filter((p) => ['acute-30', 'flattening'].includes(p.id)) };

it('an open hem is closed to its own radius: 2 t + 2 r over the anvil, planned and replayed', async () => {
  const made = profilePart({ name: 'open hem', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [60, 16], turns: [{ turn: 180, insideRadius: 1 }] });
  if (!made.ok) throw new Error(made.failure.sentence);
  const trial = await planAndProve({ part: made.value, machine: demoFloor().find((m) => m.id === 'general')!, rack, metal: metalById('dc01')!, quantity: 10 });
  expect(trial.reasons).toEqual([]);
  expect(trial.proof).toMatchObject({ checked: true, passed: true, findings: [] });
  expect(trial.steps.map((s) => s.kind)).toEqual(['V bend', 'hem close']);
  const close = trial.steps[1]!;
  const anvil = rack.dies.find((d) => d.id === 'anvil')!;
  expect(close.ramPosition).toBeCloseTo(anvil.height + 2 * 1.5 + 2 * 1, 9);
  expect(close.insideRadius).toBe(1);
  expect(close.crowningWords).toBe('no crowning: punch and anvil are flat');
});

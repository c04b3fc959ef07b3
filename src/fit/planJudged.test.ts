import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { trayPart } from '../sheet/index.js';
import { type Machine, type Rack, demoFloor, demoRack } from '../shop/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { planJudged } from './planJudged.js';
import { overloadsByWorstStock } from './worstStock.js';

// two flanges along the metre of a base of 3 mm: one long enough for any V, one of 16 mm that wants a small one, 300 mm of it
const tray = trayPart({ name: 'long and short flange', thickness: 3, insideRadius: 3, base: [1000, 300], arms: [[{ length: 60, turn: 90 }], [{ length: 16, turn: 90 }], [], []] });
if (!tray.ok) throw new Error(tray.failure.sentence);
const part = tray.value;
const general = demoFloor().find((m) => m.id === 'general')!;
const rack: Rack = { ...demoRack(), punches: demoRack().punches.filter((p) => p.id === 'straight-r1'), dies: demoRack().dies.filter((d) => d.shape === 'V' && d.v >= 16 && d.v <= 32) };
const ask = (machine: Machine): TrialInput => ({ part, machine, rack, metal: metalById('dc01')!, quantity: 10 });
const rated = (kilonewtons: number): Machine => ({ ...general, rating: kilonewtons * 1000 });
const vOf = (trial: Trial, bend: string): number => trial.dies.find((d) => d.id === trial.steps.find((s) => s.bends.includes(bend))!.die)!.v;

describe('a plan that the thickest and strongest sheet overloads', () => {
  it('is made again with the bend that asks too much in a wider V, the others where they were', async () => {
    // V 24 asks 229 kN of the metre in the worst sheet, V 32 160; the 16 mm flange lies on neither
    const trial = await planJudged(ask(rated(181)));
    expect(trial.verdict, trial.reasons[0]?.sentence).toBe('makes');
    expect(overloadsByWorstStock(trial)).toEqual([]);
    expect([vOf(trial, 'b1'), vOf(trial, 'b2')]).toEqual([32, 20]);
  });

  it('is refused where the widest V asks too much as well, with the force', async () => {
    const trial = await planJudged(ask(rated(150)));
    expect(trial.verdict).toBe('does not make');
    expect(trial.reasons[0]!.code).toBe('force');
    expect(trial.reasons[0]!.sentence).toMatch(/b1 in .* the thickest and strongest that its standards let through asks \d+ kN where 150 is the machine rating/);
    expect(trial.reasons[0]!.by!).toBeGreaterThan(0);
  });

  it('is not decided where the plans with wider Vs were broken off', async () => {
    let stopped = false;
    const trial = await planJudged(ask(rated(181)), { cancelled: () => stopped, onProof: (share) => void (stopped ||= share >= 1) });
    expect(stopped).toBe(true);
    expect(trial.verdict).toBe('not decided');
    expect(trial.reasons.map((r) => r.sentence)[1]).toBe('Whether wider Vs for b1 keep within it was not decided.');
  });
});

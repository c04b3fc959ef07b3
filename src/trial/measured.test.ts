import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { metalById } from '../metal/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { profilePart } from '../sheet/index.js';
import { planTrial } from './planTrial.js';
import type { Trial } from './trial.js';

const rack = demoRack();
const few = { ...rack, dies: rack.dies.filter((d) => d.id === 'die-v12-85'), punches: rack.punches.filter((p) => ['straight-r1', 'gooseneck'].includes(p.id)) };
const machine = demoFloor().find((m) => m.id === 'general')!;
const metal = metalById('dc01')!;
const partOf = (id: string): Parameters<typeof planTrial>[0]['part'] => benchParts().find((b) => b.id === id)!.part;

describe('what is expected of the flange measured after a stroke', () => {
  const spreads = (trial: Trial, length: number): readonly (readonly [number, number])[] =>
    (trial.dimensions ?? []).filter((d) => Math.abs(d.value - length) < 0.05).map((d) => [d.firstPiece.rootSumSquare, d.batch.rootSumSquare]);

  it.each(['P1', 'P5'])('%s: a free flange deviates after its stroke as it does on the finished part', (id) => {
    // its length hangs on its own bend and stop alone: the finished part's dimension, worked out on another path, says the same
    const trial = planTrial({ part: partOf(id), machine, rack: few, metal, quantity: 10 });
    expect(trial.verdict).toBe('makes');
    const free = trial.steps.filter((s) => spreads(trial, s.measure.length).length > 0);
    expect(free.length).toBeGreaterThan(0);
    for (const { measure } of free) {
      expect(spreads(trial, measure.length)).toContainEqual([expect.closeTo(measure.firstPiece!, 6), expect.closeTo(measure.batch!, 6)]);
      expect(measure.firstPiece!).toBeGreaterThan(measure.batch!);
    }
  });
});

describe('weight', () => {
  const made = profilePart({ name: 'heavy angle', thickness: 2, insideRadius: 2, width: 1500, flanges: [300, 300], turns: [90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  const plan = (limits: Parameters<typeof planTrial>[0]['limits']): Trial =>
    planTrial({ part: made.value, machine, rack: { ...few, dies: rack.dies.filter((d) => d.id === 'die-v16-85') }, metal, quantity: 10, ...(limits ? { limits } : {}) });

  it('no limit is asked by itself: the weight is told, nothing more', () => {
    const trial = plan(undefined);
    // (300 + 300 less a deduction of 3 to 4.5 mm) x 1500 x 2 mm of steel, 7.85e-6 kg/mm3: 14.02 to 14.06 kg
    expect(trial.lifting).toEqual({ kilograms: expect.closeTo(14.04, 1), onePerson: null, help: false });
    expect(trial.steps[0]!.words).not.toMatch(/persons/);
  });

  it('over the shop\'s limit every step names the help; without help it is refused by so many kg', () => {
    const trial = plan({ onePerson: 12 });
    expect(trial.verdict).toBe('makes');
    expect(trial.lifting!.help).toBe(true);
    expect(trial.steps.every((s) => s.words.startsWith('Two persons or a lifting aid. '))).toBe(true);
    expect(trial.warnings[0]).toMatch(/^The blank weighs 14\.\d kg, over the 12\.0 kg that this shop lets one person handle: two persons or a lifting aid at every step\./);
    const alone = plan({ onePerson: 12, help: 'none' });
    expect(alone.verdict).toBe('does not make');
    expect(alone.reasons).toMatchObject([{ code: 'weight', by: expect.closeTo(2.04, 1) }]);
    expect(plan({ onePerson: 15, help: 'none' }).verdict).toBe('makes');
  });
});

import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { type Part, profilePart, tabPlate, trayPart } from '../sheet/index.js';
import { type Machine, type Rack, demoFloor, demoRack } from '../shop/index.js';
import { type Trial, type TrialInput, planTrial } from '../trial/index.js';
import { planJudged } from './planJudged.js';
import { unpromised } from './judgedPlan.js';
import { overloadsByWorstStock, worstStock } from './worstStock.js';

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
    const trial = await planJudged(ask(rated(181)), { cancelled: () => stopped, onPlan: () => void (stopped = true) });
    expect(stopped).toBe(true);
    expect(trial.verdict).toBe('not decided');
    expect(trial.reasons.map((r) => r.sentence)[1]).toBe('Whether another way to make b1 keeps within it was not decided.');
  });
});

const angle = (thickness: number, insideRadius: number, width = 200): Part => {
  const made = profilePart({ name: 'angle', thickness, insideRadius, width, flanges: [60, 80], turns: [90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  return made.value;
};
const hem = (thickness: number): Part => {
  const made = profilePart({ name: 'hem', thickness, insideRadius: 0.1, width: 200, flanges: [60, { length: 14, measure: 'flat' }], turns: [180] });
  if (!made.ok) throw new Error(made.failure.sentence);
  return made.value;
};
const judged = (of: Part, metal: string, machine: Machine = general): Promise<Trial> => planJudged({ part: of, machine, rack: demoRack(), metal: metalById(metal)!, quantity: 10 });

describe('the worst sheet where the depth takes it onto the walls, and where no V makes the stroke', () => {
  // S355JR of 3 mm, up to 680 MPa: 413 kN in a V of 24 at its nominal thickness, more at 3.22 mm; the typical sheet asks 329
  it('a V bend of 1200 mm that asks 329 kN of 400 in the typical sheet goes into a wider V', async () => {
    const small = demoFloor().find((m) => m.id === 'small-fast')!;
    const trial = await judged(angle(3, 3, 1200), 's355jr', small);
    expect([trial.verdict, trial.dies.map((d) => d.v > 24)]).toEqual(['makes', [true]]);
  });

  it('a hem and an offset count with tensile strength and the square of thickness', async () => {
    const worn = demoFloor().find((m) => m.id === 'worn')!;
    const trial = await judged(hem(2), 'dx51d-z', worn);
    // 4 x 1.33 Rm t / 8 for the typical 375 MPa; up to 500 MPa and 2.11 mm (EN 10131, wide sheet of 2 mm)
    const close = trial.steps.find((s) => s.kind === 'hem close')!;
    expect(close.forcePerLength).toBeCloseTo((4 * 1.33 * 375 * 2) / 8, 6);
    expect(worstStock(close).find((m) => m.name.startsWith('force per length'))!.value).toBeCloseTo(close.forcePerLength * (500 / 375) * (2.11 / 2) ** 2, 6);
    expect([trial.verdict, trial.reasons[0]!.code]).toEqual(['does not make', 'tool rating']);
    expect(trial.reasons[0]!.sentence).toMatch(/asks 740 N\/mm where 600 .* in proportion to tensile strength and to thickness squared, common practice, no source\.$/);
  });
});

it('bends in line that one stroke overloads in the worst sheet are not decided: one by one they may do', async () => {
  const made = tabPlate({ name: 'two tabs', thickness: 1.5, insideRadius: 1.5, base: [300, 100], rows: [{ count: 2, width: 100, length: 30, turn: 90 }, undefined, undefined, undefined] });
  if (!made.ok) throw new Error(made.failure.sentence);
  const dies = demoRack().dies.filter((d) => d.id === 'die-v12-85');
  const input = { part: made.value, machine: rated(20), rack: { ...rack, dies }, metal: metalById('dc01')!, quantity: 10 };
  // 84 N/mm on 200 mm, 117 in the worst sheet: 23 kN together, 12 each
  const trial = await planJudged(input);
  expect([trial.verdict, trial.reasons.map((r) => r.code)]).toEqual(['not decided', ['force', 'limit']]);
  const one = await planJudged({ ...input, machine: rated(11.5) });
  expect(one.verdict).toBe('does not make');
});

describe('a plan that bends the metal to less than its least radius', () => {
  // DIN 6935: 3 mm for S235JR of 2 mm across the grain; a tip of 1 in a V of 16 forms less, one of 3 forms more
  it('is made again under another tip or in another V, the first choice of what holds untouched', async () => {
    const trial = await judged(angle(2, 2), 's235jr');
    expect(trial.verdict, trial.reasons[0]?.sentence).toBe('makes');
    expect(trial.steps[0]!.insideRadius).toBeGreaterThanOrEqual(3);
    expect(trial.steps[0]).toMatchObject({ die: 'die-v16-85', punch: 'straight-r3' });
  });

  it('is refused with its figures where no tool of the rack keeps it, and says where the drawing asks it', async () => {
    // 2.5 t for 6061-T6 of 3 mm
    const wide = await judged(angle(3, 9), '6061-t6');
    expect([wide.verdict, wide.reasons[0]!.code]).toEqual(['does not make', 'minimum radius']);
    expect(wide.reasons[0]!.sentence).toMatch(/^At step 1 b1 comes out with an inside radius of \d\.\d\d mm in V 24 .* and 7\.50 mm is the least for .* across the grain .*\. The most that a V of the rack forms is \d\.\d\d mm \(V 40/);
    expect(wide.reasons[0]!.by).toBeCloseTo(7.5 - wide.steps[0]!.insideRadius, 9);
    const drawn = await judged(angle(3, 3), '6061-t6');
    expect(drawn.reasons[0]!.sentence).toContain('; the drawing itself asks 3.00 mm.');
  });

  it('only warns where the figure has no source', async () => {
    // 3.9 mm in a V of 24 and 1 t: the galvanised sheet's figure is a habit; wear plate's is recalled
    const trial = await judged(angle(2, 1), 'dx51d-z');
    const least = { ...metalById('dx51d-z')!, minRadius: { kind: 'factor', across: 4, along: 6, mark: 'common practice', source: 'a habit' } as const };
    const input = { part: angle(2, 1), machine: general, rack: demoRack(), metal: least, quantity: 10 };
    expect([trial.verdict, unpromised(trial, input)]).toEqual(['makes', []]);
    expect(unpromised(trial, { ...input, metal: { ...least, minRadius: { ...least.minRadius, mark: 'textbook' } } }).map(({ reason }) => reason.code)).toEqual(['minimum radius']);
  });

  it('a hem is folded flat of soft metal only', async () => {
    const long = { ...hem(1) };
    const plan = (metal: string): Trial => planTrial({ part: long, machine: general, rack: demoRack(), metal: metalById(metal)!, quantity: 10 });
    const [soft, hard] = [plan('dc01'), plan('6061-t6')];
    const told = (trial: Trial, metal: string): readonly string[] => unpromised(trial, { part: long, machine: general, rack: demoRack(), metal: metalById(metal)!, quantity: 10 }).map(({ reason }) => reason.sentence);
    expect([soft.verdict, told(soft, 'dc01'), soft.warnings.filter((w) => w.includes('closed hem'))]).toEqual(['makes', [], []]);
    // 1.5 t across for 1 mm, half as much again along
    expect(hard.warnings.join('\n')).toMatch(/Step 2: inside radius of the closed hem along the grain 0\.10 mm where 2\.25 mm is the limit/);
    expect(told(hard, '6061-t6').join('\n')).toMatch(/At step 2 b1 is closed to an inside radius of 0\.10 mm, and 1\.50 mm is the least for 6061/);
  });
});

import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { type MeasuredDeduction, plateBeam, sectionBeam } from '../forming/index.js';
import { circle, vertex } from '../geometry/index.js';
import { metalById } from '../metal/index.js';
import { type Part, profilePart } from '../sheet/index.js';
import { type Machine, demoFloor, demoRack } from '../shop/index.js';
import { planTrial } from './index.js';
import { nearestCut } from './nearestCut.js';

const rack = demoRack();
const metal = metalById('dc01')!;
const general = demoFloor().find((m) => m.id === 'general')!;
const partOf = (id: string): Part => benchParts().find((b) => b.id === id)!.part;
const plan = (part: Part, machine: Machine = general, deductions?: readonly MeasuredDeduction[]) =>
  planTrial({ part, machine, rack, metal, quantity: 1, ...(deductions ? { deductions } : {}) });

describe('sections as beams', () => {
  it('a rectangle is the plate on edge', () => {
    const [rectangle, plate] = [sectionBeam([[vertex(-30, 50), vertex(30, 50), vertex(30, 850), vertex(-30, 850)]], 2550), plateBeam(60, 800, 2550)];
    expect(rectangle.area).toBeCloseTo(plate.area, 6);
    expect(rectangle.inertia / plate.inertia).toBeCloseTo(1, 12);
  });
  it('a tube and a T by hand', () => {
    // pi/4 (r^4 - q^4), the bore running the other way round
    expect(sectionBeam([circle(0, 300, 100), circle(0, 300, 60, true)], 1).inertia / ((Math.PI / 4) * (100 ** 4 - 60 ** 4))).toBeCloseTo(1, 3);
    // head 100 x 20 on a web 20 x 100: areas 2000 and 2000, their middles 60 apart: 2000 30^2 twice, and each its own
    const t = sectionBeam([[vertex(-10, 0), vertex(10, 0), vertex(10, 100), vertex(50, 100), vertex(50, 120), vertex(-50, 120), vertex(-50, 100), vertex(-10, 100)]], 1);
    expect(t.area).toBeCloseTo(4000, 9);
    expect(t.inertia).toBeCloseTo(2 * 2000 * 30 ** 2 + (20 * 100 ** 3) / 12 + (100 * 20 ** 3) / 12, 3);
  });
});

describe('the grain', () => {
  const made = profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  const part = made.value;
  const { line } = part.bends[0]!.sides.find(({ plate }) => plate === 0)!;
  const along = (Math.atan2(line.to[1] - line.from[1], line.to[0] - line.from[0]) * 180) / Math.PI;
  const radiusLimit = (rolling?: number) => plan({ ...part, ...(rolling === undefined ? {} : { marks: { rolling } }) }).steps[0]!.forming!.limits.find(({ name }) => name.startsWith('inside radius'))!;
  // Kalpakjian and Schmid, table 16.3 (CHECKS 1.5): low-carbon steel, soft, 0.5 t of 1.5 mm across; along half as much again, common practice, no source
  it.each([[0, 'along', 1.125], [180, 'along', 1.125], [30, 'along', 1.125], [90, 'across', 0.75], [-70, 'across', 0.75]] as const)('rolled at %s degrees to the bend line it bends %s the grain: %s mm at least', (off, grain, least) => {
    const rolling = ((along + off + 180) % 360) - 180;
    expect(radiusLimit(rolling)).toMatchObject({ name: `inside radius ${grain} the grain`, limit: least });
  });
  it('where it is not told the worse is taken, and said so', () => {
    expect(radiusLimit()).toMatchObject({ name: 'inside radius along the grain', limit: 1.125, source: expect.stringContaining('rolling direction is not told') });
  });
});

describe('a row of the shop\'s table that cannot be', () => {
  it('is taken, told to beware of, and its spread bounds what the first piece may miss', () => {
    const made = profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] });
    if (!made.ok) throw new Error(made.failure.sentence);
    const { steps: [step], dies: [die], punches: [punch] } = plan(made.value);
    const row = { metal: metal.id, thickness: 1.5, v: die!.v, vConvention: die!.vConvention, tipRadius: punch!.tipRadius, bendAngle: 90, pieces: 2, note: '' };
    const taken = plan(made.value, general, [{ ...row, deduction: step!.deduction - 6, spread: 6 }]);
    expect(taken.warnings).toContainEqual(expect.stringMatching(/^The shop's measured deduction for 1\.50 mm over V .*: measure a strip again before a blank is cut\.$/));
    expect(plan(made.value, general, [{ ...row, deduction: step!.deduction + 0.1, spread: 0.05 }]).warnings.join(' ')).not.toContain('measured deduction for');
    const first = ({ dimensions }: typeof taken): number => Math.max(...dimensions!.map(({ firstPiece }) => firstPiece.worstCase));
    expect(first(taken)).toBeGreaterThan(first(plan(made.value)) + 2);
  });
});

describe('the nearest hole or cut-out', () => {
  const made = profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] });
  const angle = made.ok ? made.value : null;
  const withPlate = (outline: Part['plates'][number]): Part => ({ ...angle!, plates: [outline, angle!.plates[1]!] });
  const side = angle!.bends[0]!.sides[0];
  const plate = angle!.plates[side.plate]!;
  // the bend line of plate 0 and a place 6 mm from it, inside the plate, in the middle of its length
  const { from, to } = side.line;
  const middle = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
  const away = [(to[1] - from[1]) / 100, -(to[0] - from[0]) / 100] as const;
  it('a hole of 4 mm whose middle lies 6 mm off leaves 4 mm', () => {
    const hole = circle(middle[0] + 6 * away[0], middle[1] + 6 * away[1], 2, true);
    expect(nearestCut(withPlate({ ...plate, holes: [hole] }), 0, 10)).toBeCloseTo(4, 1);
  });
  it('none, none near enough, and one that the bend crosses', () => {
    expect(nearestCut(angle!, 0, 10)).toBeNull();
    const far = circle(middle[0] + 20 * away[0], middle[1] + 20 * away[1], 2, true);
    expect(nearestCut(withPlate({ ...plate, holes: [far] }), 0, 10)).toBeNull();
    const crossed = { ...angle!, bends: [{ ...angle!.bends[0]!, zone: [...angle!.bends[0]!.zone, [vertex(10, 0), vertex(10, 1), vertex(20, 1), vertex(20, 0)]] }] };
    expect(nearestCut(crossed, 0, 10)).toBe(0);
  });
});

describe('a trial uses forming fully', () => {
  const trial = plan(partOf('P1'));
  const step = trial.steps[0]!;
  const forming = step.forming!;
  it('rules stand beside the strip', () => {
    // P1: t 1.5; 1.33 Rm t^2 / V with DC01's typical 335 MPa, V from the trial's own die
    const v = rack.dies.find((d) => d.id === step.die)!.v;
    const textbook = forming.byRule.find((r) => r.source.startsWith('1.33'))!;
    expect(textbook.value).toBeCloseTo((1.33 * 335 * 1.5 ** 2) / v, 6);
    expect(textbook.strip).toBe(step.forcePerLength);
    expect(new Set(forming.byRule.map((r) => r.what))).toEqual(new Set(['peak force per length', 'inside radius', 'allowance', 'deduction', 'springback', 'depth']));
    for (const row of forming.byRule) expect(row.source).not.toBe('');
  });
  it('limits, scatter, V and test strip are there, with sources', () => {
    expect(forming.limits.map((l) => l.name)).toEqual(expect.arrayContaining([
      'force against the machine', 'force on the emptier cylinder', 'inside radius along the grain', 'flange at the start of the stroke',
      'flange at the end of the stroke', 'included angle under load over the die', 'angle spread along the bend by deflection',
    ]));
    expect(forming.range!.bendAngleReleased.min).toBeLessThan(90);
    expect(forming.range!.bendAngleReleased.max).toBeGreaterThan(90);
    // EN 10131: 1.5 mm up to 1500 wide +-0.09 mm; EN 10130: 270 to 410 of 335 MPa
    expect(forming.rangeWords).toMatch(/-0\.09 to \+0\.09 mm, strength 81 % to 122 %/);
    expect(forming.whyV[0]).toContain(`V ${rack.dies.find((d) => d.id === step.die)!.v} (`);
    expect(forming.whyV).toHaveLength(3);
    expect(forming.testStrip!.bends.map((b) => Math.round(b.bendAngle))).toEqual([90, 60]);
    expect(forming.testStrip!.bends[0]!.depth).toBeCloseTo(step.depth, 6);
  });
  it('deflection: a longer bend asks more crowning, and without a device it is told as degrees', () => {
    const long = profilePart({ name: 'long angle', thickness: 3, insideRadius: 3, width: 2400, flanges: [60, 80], turns: [90] });
    if (!long.ok) throw new Error(long.failure.sentence);
    const crowned = plan(long.value).steps[0]!;
    expect(crowned.crowning).toBeGreaterThan(0.01);
    expect(crowned.crowning).toBe(crowned.forming!.crowning.setting);
    expect(crowned.forming!.crowning.residual).toBeLessThan(crowned.forming!.crowning.uncrowned / 3);
    const bare = plan(long.value, { ...general, crowning: 'none' }).steps[0]!;
    expect(bare.crowning).toBeNull();
    expect(bare.forming!.crowning.residual).toBeGreaterThanOrEqual(bare.forming!.crowning.uncrowned);
    expect(bare.crowningWords).toMatch(/give way \d\.\d\d mm more in the middle .* about \d\.\d degrees of bend angle; no crowning: shim/);
  });
  it('a measured deduction overrides the strip: blank and stop follow it', () => {
    const die = rack.dies.find((d) => d.id === step.die)!;
    const punch = rack.punches.find((p) => p.id === step.punch)!;
    const row: MeasuredDeduction = {
      metal: 'dc01', thickness: 1.5, v: die.v, vConvention: die.vConvention, tipRadius: punch.tipRadius, bendAngle: 90,
      deduction: step.deduction + 0.2, pieces: 4, spread: 0.03, note: '',
    };
    const measured = plan(partOf('P1'), general, [row]).steps[0]!;
    expect(measured.forming!.deduction).toMatchObject({ source: 'measured', spread: 0.03 });
    expect(measured.deduction).toBeCloseTo(step.deduction + 0.2, 12);
    // allowance = 2 (R + t) - deduction at 90 degrees, R by the strip as before
    expect(measured.allowance).toBeCloseTo(2 * (step.insideRadius + 1.5) - step.deduction - 0.2, 9);
    expect(forming.deduction.source).toBe('strip');
    const other = plan(partOf('P1'), general, [{ ...row, metal: '1.4301' }]).steps[0]!;
    expect(other.allowance).toBe(step.allowance);
  });
  it('stations stand where neither cylinder pulls, or the order is refused by force', () => {
    const wide = plan(partOf('P15'));
    const few = { ...rack, punches: wide.punches, dies: wide.dies };
    const at = (s: (typeof wide.steps)[number], spacing: number): number => ((s.cylinderForces[1] - s.cylinderForces[0]) / s.force) * (spacing / 2);
    expect(wide.stations.length).toBeGreaterThan(1);
    const places = wide.steps.map((s) => at(s, general.cylinders.spacing));
    const apart = Math.max(...places) - Math.min(...places);
    // cylinders just further apart than the two outermost steps: the row must stand about in their middle
    const close = planTrial({ part: partOf('P15'), machine: { ...general, cylinders: { ...general.cylinders, spacing: Math.ceil(apart) + 20 } }, rack: few, metal, quantity: 1 });
    expect(close.steps.length).toBe(3);
    for (const s of close.steps) expect(Math.min(...s.cylinderForces)).toBeGreaterThanOrEqual(0);
    const narrow = planTrial({ part: partOf('P15'), machine: { ...general, cylinders: { ...general.cylinders, spacing: 5 } }, rack: few, metal, quantity: 1 });
    expect(narrow.steps).toEqual([]);
    expect(narrow.reasons.map((r) => r.code)).toContain('force');
    expect(narrow.reasons.find((r) => r.code === 'force')!.sentence).toMatch(/levers the other up/);
  });
});

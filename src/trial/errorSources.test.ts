import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { type Part, partFromLine } from '../sheet/index.js';
import { type Machine, demoFloor, demoRack } from '../shop/index.js';
import { errorSources } from './errorSources.js';
import { planTrial } from './planTrial.js';

// Half ranges by hand: what no machine record states is common practice, no source; EN 10131 lets 1.5 mm of
// sheet 1,250 wide differ by 0.09 mm, of which one batch fills a quarter.

const metal = metalById('dc01')!;
const fresh: Machine = demoFloor().find((m) => m.id === 'general')!;
const measured: Machine = { ...fresh, repeatability: { ram: { source: 'measured', value: 0.011 }, x: { source: 'measured', value: 0.052 }, r: { source: 'measured', value: 0.083 } } };
const of = (machine: Machine, thickness = 1.5): Record<string, number | null> => {
  const s = errorSources(machine, metal, thickness);
  const all = [
    s.thickness, s.thicknessRead, s.strength, s.xZero, s.squareness, s.ram('b1'), s.x('b1'), s.r('b1'), s.play('b1', 0), s.edge('e'), s.scribed('b1'), s.sideways('b1'), s.heldSquare('b1'), s.angle('V'), s.deduction('V', null),
  ];
  return Object.fromEntries(all.map(({ what, half }) => [what, half === null ? null : Number(half.toFixed(9))]));
};

describe('where deviations come from', () => {
  it('the half ranges of a new machine', () => {
    expect(of(measured)).toEqual({
      'thickness within the batch': 0.0225, 'thickness as measured beforehand': 0.02, 'strength within the batch': 0.04, 'zero of the X axis': 0.1, 'squareness of the gauge': 0.1,
      'repeatability of the ram': 0.011, 'repeatability of X': 0.052, 'repeatability of R': 0.083, 'play and touch of a finger': 0.03, 'cut of an edge': 0.1, 'placing by eye': 0.5,
      'place along the bed, at a tapered edge': 0.5, 'holding square against one short stop': 0.1, 'bend angle left by the test strip': 0.5, 'deduction left by the test strip': 0.1,
    });
  });

  it('a measured deduction is no better known than its pieces agreed, and no better than a caliper reads', () => {
    const left = (spread: number | null): readonly [number | null, string] => {
      const { half, mark } = errorSources(measured, metal, 1.5).deduction('V', spread);
      return [half, mark];
    };
    expect([left(null), left(0.04), left(0.35)]).toEqual([[0.1, 'common practice, no source'], [0.1, 'common practice, no source'], [0.35, 'measured']]);
  });

  it('a thickness that no standard names: two hundredths of it', () => {
    expect(of(fresh, 40)['thickness within the batch']).toBeCloseTo(0.8, 9);
  });

  it('unmeasured is not known: play and squareness of a used machine, and each axis whose record says so', () => {
    const used: Machine = { ...measured, condition: 'reconditioned' };
    expect(of(used)).toMatchObject({ 'play and touch of a finger': null, 'squareness of the gauge': null, 'repeatability of R': 0.083 });
    const known: Machine = { ...used, gauge: { ...used.gauge, play: { source: 'measured', value: 0.07 }, squareness: { source: 'measured', value: 0.3 } } };
    expect(of(known)).toMatchObject({ 'play and touch of a finger': 0.07, 'squareness of the gauge': 0.3 });
    const bare: Machine = { ...fresh, repeatability: { ram: { source: 'not known' }, x: { source: 'not known' }, r: { source: 'not known' } }, gauge: { ...fresh.gauge, play: { source: 'not known' } } };
    expect(of(bare)).toMatchObject({ 'repeatability of the ram': null, 'repeatability of X': null, 'repeatability of R': null, 'play and touch of a finger': null, 'squareness of the gauge': 0.1 });
  });

  it('a tolerance on a used machine whose play and squareness nobody measured hangs on both, not known', () => {
    const read = partFromLine('40 ^90 60 t1.5 w200', 'angle');
    if (!read.ok) throw new Error(read.fault.sentence);
    const part: Part = { ...read.value, dimensions: [{ id: 'd1', between: [{ kind: 'edge', plate: 1, at: [100, 58] }, { kind: 'corner', plate: 1, bend: 0 }] }] };
    const on = (machine: Machine): readonly string[] => {
      const edge = part.plates[1]!.outline.reduce((far, v) => (v.y > far.y ? v : far));
      const dimension = { ...part.dimensions![0]!, between: [{ kind: 'edge' as const, plate: 1, at: [100, edge.y] as const }, part.dimensions![0]!.between[1]] as const };
      const all = demoRack();
      const rack = { ...all, punches: all.punches.filter((p) => p.id === 'straight-r1'), dies: all.dies.filter((d) => d.v === 12) };
      return planTrial({ part: { ...part, dimensions: [dimension] }, machine, rack, metal, quantity: 50 }).dimensions![0]!.notKnown;
    };
    expect(on(fresh)).toEqual([]);
    // seats straight, so that nothing else is unmeasured
    const seats: Machine['seats'] = { source: 'measured', tilt: 'none', places: [{ along: -1600, gap: 0 }, { along: 1600, gap: 0 }] };
    expect([...on({ ...fresh, condition: 'reconditioned', seats })].sort()).toEqual(['play and touch of a finger', 'squareness of the gauge']);
  });
});

import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { type Dimension, type Part, partFromLine } from '../sheet/index.js';
import { type ConditionRecord, type Machine, demoFloor, demoRack, demoShopData, withCondition } from '../shop/index.js';
import { planTrial } from './planTrial.js';
import type { Trial } from './trial.js';

const metal = metalById('dc01')!;
const rack = ((): ReturnType<typeof demoRack> => {
  const all = demoRack();
  return { ...all, punches: all.punches.filter((p) => p.id === 'straight-r1'), dies: all.dies.filter((d) => d.v === 12) };
})();

/** A channel 60 wide outside with flanges of 30: how wide it is at their ends hangs on both bend angles. */
const TOLERANCE = 0.4;
const channel = (width: number, tolerance?: number): Part => {
  const read = partFromLine(`30 ^90 60 ^90 30 t1.5 w${width}`, `channel ${width}`);
  if (!read.ok) throw new Error(read.fault.sentence);
  const between: Dimension['between'] = [{ kind: 'face', plate: 0, side: 'B' }, { kind: 'face', plate: 2, side: 'B' }];
  return { ...read.value, dimensions: [{ id: 'd1', between, ...(tolerance === undefined ? {} : { tolerance }) }] };
};

const fresh = demoFloor().find((m) => m.id === 'general')!;

/** The same machine taken in used, all measured as good as new but for its seats: a dip of 0.2 mm between 300 left and 300 right of the middle. */
const record = (wear: ConditionRecord['asFound']['wear']): ConditionRecord => {
  const [demo] = demoShopData().conditions;
  return {
    ...demo!, machineId: 'general', overhauled: null,
    asFound: { ...demo!.overhauled!, forceReached: 1_100_000, squareness: 0.1, play: 0.03, repeatability: { ram: 0.01, x: 0.04, r: 0.08, z: 0.1 }, crowningWorks: true, tiltWorks: false, wear },
  };
};
const dip = [[-1500, 0], [-300, 0], [0, 0.2], [300, 0], [1500, 0]].map(([along, gap]) => ({ along: along!, bed: -gap!, ram: 0 }));
const used: Machine = withCondition({ ...fresh, condition: 'reconditioned', crowning: 'none' }, record(dip));
const unmeasured: Machine = withCondition({ ...fresh, condition: 'reconditioned', crowning: 'none' }, record([]));

const tried = (machine: Machine, width: number, tolerance?: number): Trial => planTrial({ part: channel(width, tolerance), machine, rack, metal, quantity: 50 });

describe('the same part and tolerance on the machine new and worn', () => {
  it('is promised on the new one', () => {
    const trial = tried(fresh, 2000, TOLERANCE);
    expect(trial.verdict).toBe('makes');
    expect(trial.dimensions![0]).toMatchObject({ verdict: 'holds', tolerance: TOLERANCE });
    expect(trial.dimensions![0]!.contributions.some(({ what }) => what.startsWith('wear'))).toBe(false);
  });

  it('not on the worn one, where 2,000 mm cannot keep clear of the dip: the sentence names the measurement', () => {
    const trial = tried(used, 2000, TOLERANCE);
    expect(trial.verdict).toBe('does not make');
    expect(trial.reasons[0]).toMatchObject({ code: 'tolerance', bodies: ['wear of bed and ram seats'] });
    // half of 0.2 mm
    expect(trial.reasons[0]!.sentence).toMatch(/scatters by 0\.\d\d mm on General.* is wear of bed and ram seats: 0\.10 mm, measured; least from -1000 to 1000 mm of the bed's middle\.$/);
    expect(tried(used, 2000).verdict).toBe('makes');
  });

  it('1,000 mm is placed beside the dip and promised', () => {
    const trial = tried(used, 1000, TOLERANCE);
    expect(trial.verdict).toBe('makes');
    expect(trial.dimensions![0]!.verdict).toBe('holds');
    // its nearer end stands at 300 when its middle stands at 300 + 500
    expect(trial.warnings.join(' ')).toContain("The stations stand 800 mm to the left of the bed's middle: there the worn seats leave plus or minus 0.000 mm of depth along a bend, in the middle plus or minus 0.100 mm.");
  });

  it('where nobody measured the seats nothing is promised, and it says so', () => {
    const trial = tried(unmeasured, 1000, TOLERANCE);
    expect(trial.verdict).toBe('not decided');
    expect(trial.reasons[0]!.sentence).toMatch(/cannot be promised on .*: wear of bed and ram seats bears on it and was not measured\.$/);
  });
});

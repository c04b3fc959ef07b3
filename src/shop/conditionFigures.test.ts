import { describe, expect, it } from 'vitest';
import type { ConditionRecord, ConditionState } from './condition.js';
import { conditionFigures } from './conditionFigures.js';
import { demoFloor } from './demo.js';
import { parseCondition } from './parseCondition.js';

const general = demoFloor().find(({ id }) => id === 'general')!;
const nothing: ConditionState = {
  date: '2026-02-28', by: 'Ann', instruments: [], throat: null, throatWords: '', ramDrift: null, forceReached: null, guideClearance: null, wear: [], squareness: null, play: null,
  repeatability: { ram: null, x: null, r: null, z: null }, crowningWorks: null, tiltWorks: null, guarding: null, stoppingTime: null, testedBy: '', testBends: [], remarks: '',
};
const record = (asFound: Partial<ConditionState> = {}): ConditionRecord => ({
  machineId: 'general', demo: true, plate: { serial: '', year: null, force: null, mass: null }, manuals: null, supply: '', asFound: { ...nothing, ...asFound }, overhaul: '', overhauled: null,
});

describe('what follows from a condition record', () => {
  it('of one in which nothing was measured: nothing is as new, every reading is named as not known', () => {
    const { notMeasured, corrected, elsewhere, avoided, scatter, driftPerSecond } = conditionFigures(general, record(), 1000);
    expect([corrected, elsewhere, avoided, scatter, driftPerSecond]).toEqual([null, null, null, null, null]);
    expect(notMeasured.map(({ what }) => what)).toEqual([
      'wear of bed and ram seats', 'repeatability of the ram', 'repeatability of X', 'repeatability of R', 'play of a finger', 'squareness of the gauge', 'repeatability of Z', 'force reached',
      'cracks or weld repair at the throat', 'ram drift under hold', 'clearance in the guides', 'crowning', 'tilt of the ram', 'test bend at light load, left, middle and right',
      'test bend at heavy load, left, middle and right', 'guarding', 'stopping time',
    ]);
  });

  it('placing work beside a dip of 0.2 mm avoids what stays of it in the middle', () => {
    const wear = Array.from({ length: 13 }, (_, i) => ({ along: (i - 6) * 250, bed: i === 6 ? -0.2 : 0, ram: 0 }));
    const f = conditionFigures(general, record({ wear }), 500);
    // from -250 to 250 the gap is 0, 0.2, 0: half of it to either side of the best depth; elsewhere the seats are straight
    expect(f.inTheMiddle!.left).toBeCloseTo(0.1, 9);
    expect(f.elsewhere!.fit.left).toBeCloseTo(0, 9);
    expect(f.avoided).toBeCloseTo(0.1, 9);
  });
});

describe('days of a record', () => {
  it.each(['2026-02-28', '2024-02-29', '2000-02-29', '2026-12-31'])('%s is one', (date) => expect(parseCondition(record({ date })).ok).toBe(true));
  it.each(['2026-02-30', '2026-02-29', '1900-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '30.11.2026', ''])('%j is none', (date) =>
    expect(parseCondition(record({ date }))).toMatchObject({ ok: false, fault: { field: 'asFound.date' } }));
});

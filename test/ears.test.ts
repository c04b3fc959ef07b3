import { beforeAll, describe, expect, it } from 'vitest';
import { benchParts } from '../bench/parts.js';
import { metalById } from '../src/metal/index.js';
import { proveTrial } from '../src/proof/index.js';
import { type Punch, type Rack, demoFloor, demoRack } from '../src/shop/index.js';
import { type Trial, planTrial } from '../src/trial/index.js';
import { moved, raised, stopLeft, swapped } from './proof/damage.js';

const machine = demoFloor().find((m) => m.id === 'general')!;
const metal = metalById('dc01')!;
const only = (...ids: string[]): Rack => {
  const rack = demoRack();
  return { ...rack, punches: rack.punches.filter((p) => ids.includes(p.id)) };
};

/** ms: this machine may be busy. */
const PATIENT = 300_000;

/** The first plan that is found: the best one is a matter of time, not of geometry. */
const firstPlan = (id: string, rack: Rack): Trial => {
  let found = false;
  return planTrial({ part: benchParts().find((b) => b.id === id)!.part, machine, rack, metal, quantity: 50 }, {
    onProgress: ({ bestSeconds }) => {
      found ||= bestSeconds !== undefined;
    },
    cancelled: () => found,
  });
};

const withoutEars = (trial: Trial): Trial => ({
  ...trial,
  stations: trial.stations.map((s) => ({ ...s, punchSegments: s.punchSegments.map(({ length, from }) => ({ length, from })) })),
});

const rigid = (punch: Punch): Punch => ({
  ...punch,
  segments: punch.segments.map(({ length, count, ear }) => (ear ? { length, count, ear: { hand: ear.hand, reach: ear.reach, footHeight: ear.footHeight } } : { length, count })),
});

describe('P8: a tray 200 x 150 with 12 mm inward returns', () => {
  let trial: Trial;
  beforeAll(() => {
    trial = firstPlan('P8', only('gooseneck-deep'));
  }, PATIENT);

  it('is made with ear segments, each return before its own flange, and the independent check passes', async () => {
    expect(trial.verdict).toBe('makes');
    const proof = await proveTrial(trial);
    expect(proof.findings).toEqual([]);
    expect(proof.passed).toBe(true);
    // a return made after its flange has the base standing 28.5 mm before its bend line and 147 mm tall: at 45 degrees it
    // reaches (147 - 28.5)/sqrt 2 = 84 mm past the bending plane, where the ram is
    const order = trial.steps.map((s) => s.bends[0]!);
    for (const [flange, edge] of [['b1', 'b2'], ['b3', 'b4'], ['b5', 'b6'], ['b7', 'b8']] as const) {
      expect(order.indexOf(edge)).toBeLessThan(order.indexOf(flange));
    }
    // the last flange closes the ring: inside 197 or 147 mm between the walls, 176 or 126 between the returns
    const last = trial.steps[trial.steps.length - 1]!;
    const { punchSegments } = trial.stations.find((s) => s.id === last.station)!;
    const ears = punchSegments.filter((p) => p.ear);
    expect(ears.map((p) => p.ear)).toEqual(['left', 'right']);
    const length = punchSegments.reduce((sum, p) => sum + p.length, 0);
    const wide = ['b1', 'b5'].includes(last.bends[0]!) ? 200 : 150;
    expect(length).toBeLessThanOrEqual(wide - 3 - 2);
    expect(length).toBeGreaterThan(wide - 24);
    expect(length - 2 * 15).toBeLessThanOrEqual(wide - 24 - 2);
  }, PATIENT);

  it('the check rejects the same plan with plain segments in the place of the ears', async () => {
    const proof = await proveTrial(withoutEars(trial), { steps: [trial.steps.length] });
    expect(proof.passed).toBe(false);
    expect(proof.findings.join('\n')).toMatch(/the flange beyond b\d .*the punch of station S\d/);
  }, PATIENT);

  it('the check rejects it with rigid ears: on the way out they are trapped under the returns', async () => {
    // by hand: a foot of 187 mm or more (bend line less 5 at both ends) stands in an opening of 176
    const proof = await proveTrial({ ...trial, punches: trial.punches.map(rigid) }, { steps: [trial.steps.length] });
    expect(proof.passed).toBe(false);
    expect(proof.findings.join('\n')).toMatch(/, open.*the punch of station S\d/);
  }, PATIENT);

  it('the check rejects it with a flange 1 mm in an ear, the order swapped, the station raised, the gauge left where it was', async () => {
    const last = trial.steps.length;
    const found = async (spoilt: Trial, ...steps: number[]): Promise<string> => (await proveTrial(spoilt, { steps })).findings.join('\n');
    // the punch stands in the middle between the walls: half of what is left, and one more
    const { punchSegments } = trial.stations.find((s) => s.id === trial.steps[last - 1]!.station)!;
    const between = (['b1', 'b5'].includes(trial.steps[last - 1]!.bends[0]!) ? 200 : 150) - 3;
    const room = (between - punchSegments.reduce((sum, p) => sum + p.length, 0)) / 2;
    expect(await found(moved(trial, last - 1, room + 1), last)).toMatch(/the flange beyond b\d runs into an? (hanging )?ear of the punch of station S\d; they share a space of 1\.00 x/);
    // a return after its own flange: the base is in the ram
    const order = trial.steps.map((s) => s.bends[0]!);
    const pair = order.findIndex((b, i) => i > 0 && ['b1 b2', 'b3 b4', 'b5 b6', 'b7 b8'].includes(`${b} ${order[i - 1]!}`));
    if (pair > 0) expect(await found(swapped(trial, pair), pair + 1)).toMatch(new RegExp(`Step ${pair + 1}`));
    else expect(await found(swapped(trial, last - 1), last)).toMatch(new RegExp(`Step ${last}`));
    const { id, dieTop } = trial.stations[0]!;
    expect(await found(raised(trial, id, 2, 0), 1)).toContain(`the die top is written as ${(dieTop + 2).toFixed(1)} mm over the die seat; die and riser make ${dieTop.toFixed(1)} mm`);
    const other = trial.steps.findIndex((s, i) => i > 0 && s.stop.x > trial.steps[i - 1]!.stop.x + 5);
    expect(other).toBeGreaterThan(0);
    expect(await found(stopLeft(trial, other), other + 1)).toMatch(new RegExp(`Step ${other + 1}.*(finger|the stop is written)`));
  }, PATIENT);
});

import { describe, expect, it } from 'vitest';
import { signedArea } from '../geometry/index.js';
import { contourFault } from './contourFault.js';
import { DEMO_FLOOR_DATA } from './demoFloorData.js';
import { demoFloor, demoRack } from './demo.js';
import { inventedDie, inventedGooseneck, onAdapter } from './inventedTools.js';
import { parseFloor } from './parseFloor.js';
import { withOptions } from './withOptions.js';

describe('options of a machine', () => {
  it('replace what they say and nothing else', () => {
    const long = demoFloor().find((m) => m.id === 'long-fixed-r')!;
    const fitted = withOptions(long, ['powered R', 'powered crowning']);
    expect(fitted.gauge.r).toEqual({ drive: 'powered', min: 20, max: 230, speed: 80 });
    expect(fitted.crowning).toBe('powered');
    expect({ ...fitted, crowning: long.crowning, gauge: { ...fitted.gauge, r: long.gauge.r } }).toEqual(long);
    expect(withOptions(long, ['no such option'])).toEqual(long);
  });

  it('that leave no sound machine are refused with the sentence', () => {
    const [small, ...others] = structuredClone(DEMO_FLOOR_DATA) as unknown as Record<string, unknown>[];
    // shut height of the small machine is 200
    const floor = parseFloor([{ ...small, options: [{ id: 'low', name: 'Low frame', price: 1, effect: { openHeight: 150 } }] }, ...others]);
    expect(floor.ok ? '' : floor.fault.sentence).toBe('small-fast: options.0.effect leaves no sound machine: shutHeight (200) must be less than openHeight (150).');
  });
});

describe('tools beyond the rack', () => {
  it('a gooseneck bears less the further its neck stands back: bending and pressing of 30 mm at 100 N/mm2', () => {
    // lever 35 + 15 = 50: 100 / (1/30 + 6 x 50 / 900) = 100 / 0.36667 = 272.7
    const punch = inventedGooseneck({ relief: 35, height: 220, tipRadius: 1, tang: 'tang A', price: 1 })!;
    expect(punch.rating).toBe(272);
    expect(contourFault(punch.profile)).toBeUndefined();
    expect(Math.max(...punch.profile.map((v) => v.y))).toBe(220);
    // kg per metre of steel: area in mm2 times 7.85e-3
    expect(punch.weight).toBeCloseTo(signedArea(punch.profile) * 7.85e-3, 6);
    expect(inventedGooseneck({ relief: 90, height: 220, tipRadius: 1, tang: 'tang A', price: 1 })).toBeNull();
  });

  it('a V die is a sound outline over the whole range asked', () => {
    for (const v of [4, 14, 28, 100]) {
      for (const includedAngle of [30, 85]) {
        const die = inventedDie({ v, includedAngle, height: Math.max(90, includedAngle === 30 ? 2 * v + 20 : v + 20), seat: 'seat A', price: 1 })!;
        expect(contourFault(die.profile), `V ${v}`).toBeUndefined();
      }
    }
  });

  it('a punch on an adapter is taller by the adapter, tip and nose where they were', () => {
    const punch = demoRack().punches[0]!;
    const hung = onAdapter(punch, 'tang B', 60)!;
    expect([hung.height, hung.tang]).toEqual([punch.height + 60, 'tang B']);
    expect(signedArea(hung.profile) - signedArea(punch.profile)).toBeCloseTo(30 * 60, 6);
    expect(hung.profile[0]).toEqual(punch.profile[0]);
  });
});

import { describe, expect, it } from 'vitest';
import { mulberry32 } from '../../bench/mulberry32.js';
import { type StationHeight, correctedHeights, heightFault } from './heights.js';

/*
 * V 24 beside V 8 by hand. Dies of 84 degrees included, sharp convention, both 80 high; punches of 84 degrees with a nose
 * radius of 1, both 120 high: equal stacks of 200. Depth at 90 degrees by docs/kinematics.md, b = 45 degrees:
 *   d = c tan b - (Ri + t + rd)(1 / cos b - 1)
 *   V 24, 3 mm: c = 12 + 2.5 tan 24 = 13.11307; d = 13.11307 - 9.34 x 0.414214 = 9.24432; tip at 3 - d = -6.24432
 *   V 8, 1 mm (another part on the same bed): c = 4 + tan 24 = 4.44523; d = 4.44523 - 3.28 x 0.414214 = 3.08661; tip at -2.08661
 * The shoulder seat's lowest place is 120 over that: 113.75568 and 117.91339.
 * Empty limit with 1 mm of allowance: walls of nose and V are parallel, so the nose's centre comes to (1 + 1) / sin 42 = 2.98895
 * over the V's apex at (V / 2) / tan 42, the tip 1 lower:
 *   V 8: 4.44245 - 1.98895 = 2.45350      V 24: 13.32735 - 1.98895 = 11.33840
 */
const wide: StationHeight = { id: 'V 24', dieHeight: 80, punchHeight: 120, emptyLimit: 11.3384, lowest: 113.75568 };
const narrow: StationHeight = { id: 'V 8', dieHeight: 80, punchHeight: 120, emptyLimit: 2.4535, lowest: 117.91339 };
/** A ram that reaches everything asked here. mm */
const LOW = 100;

describe('one ram, by hand', () => {
  it('the sums above', () => {
    const at = (degrees: number): number => (degrees * Math.PI) / 180;
    const tip = (v: number, rd: number, t: number, ri: number): number => t - (v / 2 + rd * Math.tan(at(24)) - (ri + t + rd) * (Math.SQRT2 - 1));
    expect(wide.lowest).toBeCloseTo(120 + tip(24, 2.5, 3, 3.84), 4);
    expect(narrow.lowest).toBeCloseTo(120 + tip(8, 1, 1, 1.28), 4);
    expect(wide.emptyLimit).toBeCloseTo(12 / Math.tan(at(42)) - (2 / Math.sin(at(42)) - 1), 4);
    expect(narrow.emptyLimit).toBeCloseTo(4 / Math.tan(at(42)) - (2 / Math.sin(at(42)) - 1), 4);
  });

  it('equal stacks: 3 mm over V 24 drives the V 8 punch 6.244 into a die that lets it 2.454', () => {
    const fault = heightFault([wide, narrow], [0, 0], LOW);
    expect(fault).toMatchObject({ kind: 'one ram', working: 'V 24', struck: 'V 8' });
    expect(fault!.by).toBeCloseTo(6.24432 - 2.4535, 9);
  });

  it('a riser of 5 under the V 24 die, and both hold; under the V 8 die it is worse', () => {
    expect(heightFault([wide, narrow], [5, 0], LOW)).toBeNull();
    expect(heightFault([wide, narrow], [0, 5], LOW)!.by).toBeCloseTo(8.79082, 9);
  });

  it('the riser may be neither under 3.791 nor over 9.252: then the V 8 stroke drives the V 24 punch too far', () => {
    expect(heightFault([wide, narrow], [3.79, 0], LOW)).toMatchObject({ kind: 'one ram', struck: 'V 8' });
    expect(heightFault([wide, narrow], [3.792, 0], LOW)).toBeNull();
    expect(heightFault([wide, narrow], [9.251, 0], LOW)).toBeNull();
    const fault = heightFault([wide, narrow], [10, 0], LOW);
    expect(fault).toMatchObject({ kind: 'one ram', working: 'V 8', struck: 'V 24' });
    expect(fault!.by).toBeCloseTo(2.08661 + 10 - 11.3384, 9);
  });

  it('a ram that does not come low enough: V 24 asks 193.756', () => {
    expect(heightFault([wide], [0], 193)).toBeNull();
    const fault = heightFault([wide], [0], 195);
    expect(fault).toMatchObject({ kind: 'shut', working: 'V 24' });
    expect(fault!.by).toBeCloseTo(195 - 193.75568, 9);
    // with the riser 198.756, and then the V 8 station at 197.913 is the one too low
    expect(heightFault([wide, narrow], [5, 0], 198)).toMatchObject({ kind: 'shut', working: 'V 8' });
  });

  it('the least riser at hand that holds', () => {
    expect(correctedHeights([wide, narrow], [[0, 20, 8, 4, 5], [0, 4, 5, 8, 20]], LOW)).toEqual([4, 0]);
    expect(correctedHeights([wide, narrow], [[0, 10, 20], [0, 10, 20]], LOW)).toBeNull();
    // 15 under one and 10 under the other: 5 between them
    expect(correctedHeights([wide, narrow], [[0, 15], [0, 10]], LOW)).toEqual([15, 10]);
  });
});

describe('against every choice written out', () => {
  /** May these stand so? Station i at its lowest: ram up = die top + lowest; tip of j over its own die top. */
  const holds = (stations: readonly StationHeight[], risers: readonly number[], shut: number): boolean => stations.every((i, a) => {
    const ram = i.dieHeight + risers[a]! + i.lowest;
    return ram >= shut && stations.every((j, b) => a === b || ram - j.punchHeight - (j.dieHeight + risers[b]!) >= -j.emptyLimit);
  });

  it('the least sum of risers (seed 71)', () => {
    const random = mulberry32(71);
    const heights = [0, 5, 10, 15, 20, 30, 40];
    let [none, flat, raised] = [0, 0, 0];
    for (let round = 0; round < 300; round++) {
      const stations = Array.from({ length: 1 + Math.floor(random() * 4) }, (_, i): StationHeight => {
        const punchHeight = 120 + Math.floor(random() * 4) * 10;
        return {
          id: `S${i}`, dieHeight: 60 + Math.floor(random() * 4) * 10, punchHeight,
          emptyLimit: -1 + random() * 14, lowest: punchHeight + 3 - random() * 12,
        };
      });
      const choices = stations.map(() => heights.filter((h) => h === 0 || random() < 0.7));
      const shut = random() < 0.3 ? 190 + random() * 20 : 0;
      let rows: number[][] = [[]];
      for (const at of choices) rows = rows.flatMap((row) => at.map((h) => [...row, h]));
      const good = rows.filter((row) => holds(stations, row, shut)).map((row) => row.reduce((a, b) => a + b, 0));
      const found = correctedHeights(stations, choices, shut);
      expect(found === null, `round ${round}`).toBe(good.length === 0);
      for (const row of rows.slice(0, 20)) expect(heightFault(stations, row, shut) === null, `round ${round}`).toBe(holds(stations, row, shut));
      if (!found) {
        none++;
        continue;
      }
      const sum = found.reduce((a, b) => a + b, 0);
      expect(sum, `round ${round}`).toBe(Math.min(...good));
      expect(holds(stations, found, shut)).toBe(true);
      found.forEach((h, i) => expect(choices[i]).toContain(h));
      if (sum === 0) flat++;
      else raised++;
    }
    expect(Math.min(none, flat, raised)).toBeGreaterThan(20);
  });
});

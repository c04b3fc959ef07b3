import { describe, expect, it } from 'vitest';
import type { Interval } from '../geometry/index.js';
import { demoRack } from '../shop/index.js';
import { type Ears, type Rows, earsOf, stationWindow } from './ears.js';

/** mulberry32 */
const seeded = (seed: number) => (): number => {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
};

const SEED = 20261125;

describe('stationWindow', () => {
  it(`holds a station exactly where foot, hanging foot and body each stand clear (seed ${SEED})`, () => {
    const random = seeded(SEED);
    const whole = (most: number): number => Math.floor(random() * most);
    const wrong: string[] = [];
    let [open, shut] = [0, 0];
    for (let n = 0; n < 200; n++) {
      const ears: Ears | null = n % 4 === 0 ? null : { reach: 5 + whole(20), footHeight: 20, slides: whole(3) * 8, left: [], right: [], feet: [] };
      const some = (): Interval[] => Array.from({ length: whole(3) }, () => {
        const from = whole(300) - 100;
        return [from, from + 1 + whole(15)] as const;
      });
      const rows: Rows = { whole: some(), drawn: some(), body: some() };
      const need: Interval = [0, 60 + whole(40)];
      // the naive twin: every whole place of either end, each row looked at by itself
      const inset = ears ? { whole: 0, drawn: ears.slides, body: ears.reach } : { whole: 0, drawn: 0, body: 0 };
      const clear = (a: number, b: number): boolean =>
        (['whole', 'drawn', 'body'] as const).every((row) => rows[row].every(([p, q]) => q <= a + inset[row] || p >= b - inset[row]));
      const window = stationWindow(rows, need, ears);
      if (window) open++;
      else shut++;
      for (let a = -150; a <= 0; a += 3) {
        for (let b = need[1]; b <= 260; b += 3) {
          const inside = window !== null && a >= window[0] && b <= window[1];
          if (inside !== clear(a, b)) wrong.push(`case ${n}: ${a} to ${b}`);
        }
      }
    }
    expect(wrong).toEqual([]);
    expect(open).toBeGreaterThan(30);
    expect(shut).toBeGreaterThan(30);
  });
});

describe('earsOf', () => {
  it('finds the sliding ears of a gooseneck in both facings, the hands exchanged when it stands reversed', () => {
    const punch = demoRack().punches.find((p) => p.id === 'gooseneck')!;
    const [drawn] = earsOf(punch, 'as drawn');
    const [turned] = earsOf(punch, 'reversed');
    expect([drawn!.reach, drawn!.slides]).toEqual([15, 15]);
    expect(drawn!.left[0]!.ear!.hand).toBe('left');
    expect(turned!.left[0]!.ear!.hand).toBe('right');
    // the foot's section is the profile up to its height, front and back exchanged
    const backs = (feet: Ears['feet']): number[] => feet.flatMap((b) => b.polygon.map((q) => q[0]));
    expect(Math.max(...drawn!.feet.flatMap((b) => b.polygon.map((q) => q[1])))).toBeCloseTo(14, 9);
    expect(Math.max(...backs(turned!.feet))).toBeCloseTo(-Math.min(...backs(drawn!.feet)), 9);
  });

  it('finds none where a rack has only one hand, or none', () => {
    const punch = demoRack().punches.find((p) => p.id === 'gooseneck')!;
    expect(earsOf({ ...punch, segments: punch.segments.filter((s) => s.ear?.hand !== 'left') }, 'as drawn')).toEqual([]);
    expect(earsOf({ ...punch, segments: punch.segments.filter((s) => !s.ear) }, 'as drawn')).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { type Contour, type Vec2, flatten } from '../geometry/index.js';
import { demoRack } from './demo.js';
import { mirrorProfile } from './mirrorProfile.js';
import { punchPenetration } from './punchPenetration.js';

const { punches, dies } = demoRack();
const punch = (id: string) => punches.find((p) => p.id === id)!;
const die = (id: string) => dies.find((d) => d.id === id)!;

/** Points at most 0.2 mm apart along an outline, none further than 40 mm from the die top or the tip. */
const sampled = (contour: Contour): Vec2[] => {
  const outline = flatten(contour, 0.0005);
  return outline
    .flatMap((a, i) => {
      const b = outline[(i + 1) % outline.length]!;
      const n = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 0.2);
      return Array.from({ length: n }, (_, k): Vec2 => [a[0] + ((b[0] - a[0]) * k) / n, a[1] + ((b[1] - a[1]) * k) / n]);
    })
    .filter((p) => Math.abs(p[1]) < 40);
};

/**
 * The naive twin: lower the punch by 0.02 mm at a time, from 0.3 mm over the answer to be tried, and look at every pair
 * of points. (An answer that went too deep shows at once: the first look finds the punch too near.)
 */
const lowered = (tool: Contour, body: Contour, allowance: number, near: number): number => {
  const [a, b] = [sampled(tool), sampled(body)];
  for (let depth = near - 0.3; ; depth += 0.02) {
    for (const p of a) {
      for (const q of b) {
        if (Math.hypot(p[0] - q[0], p[1] - depth - q[1]) < allowance) return depth;
      }
    }
  }
};

describe('punchPenetration', () => {
  it('stops 1 mm over an anvil', () => {
    expect(punchPenetration(punch('flattening'), die('anvil'), 1)).toBeCloseTo(-1, 2);
    expect(punchPenetration(punch('straight-r1'), die('anvil'), 2.5)).toBeCloseTo(-2.5, 2);
  });

  it('lets parallel flanks come to the allowance: V and nose of the same included angle', () => {
    // By hand, h half the angle: the walls' lines meet V/2 / tan h below the top, the flanks' r (1/sin h - 1) below the
    // tip; between them stands allowance / sin h.
    for (const [p, d, v, r, half] of [
      ['straight-r1', 'die-v12-85', 12, 1, 42.5],
      ['straight-r1', 'die-v8-85', 8, 1, 42.5],
      ['acute-30', 'die-v12-30', 12, 0.5, 15],
      ['acute-30', 'die-v8-30', 8, 0.5, 15],
    ] as const) {
      const h = (half * Math.PI) / 180;
      const depth = v / 2 / Math.tan(h) - r * (1 / Math.sin(h) - 1) - 1 / Math.sin(h);
      // the chords' 0.002 mm and the last 0.0001 mm act through 1/sin h
      const got = punchPenetration(punch(p), die(d), 1);
      expect(got).toBeLessThanOrEqual(depth);
      expect(depth - got).toBeLessThan(0.0025 / Math.sin(h));
    }
  });

  it.each([
    ['straight-r1', 'die-v6-30', false, 1],
    ['straight-r3', 'die-v16-85', false, 1],
    ['straight-r3', 'die-v6-85', false, 0.5],
    ['acute-60', 'die-v12-30', false, 1],
    ['gooseneck', 'die-v40-80', false, 1],
    ['gooseneck', 'die-v40-80', true, 1],
    ['flattening', 'die-v50-80', false, 1],
  ])('agrees with lowering step by step: %s in %s, reversed %s, allowance %d', (p, d, reversed, allowance) => {
    const facing = reversed ? 'reversed' : 'as drawn';
    const got = punchPenetration(punch(p), die(d), allowance, facing);
    const tool = reversed ? mirrorProfile(punch(p).profile) : punch(p).profile;
    const naive = lowered(tool, die(d).profile, allowance, got);
    // the twin steps by 0.02 and overrates distances of half a millimetre and more by no more than 0.1^2 / 2 / 0.5 = 0.01 mm
    expect(Math.abs(got - naive)).toBeLessThan(0.04);
  });

  it('is the same for a symmetrical die whichever way both are turned', () => {
    const there = punchPenetration(punch('gooseneck'), die('die-v32-85'), 1, 'as drawn', 'as drawn');
    expect(punchPenetration(punch('gooseneck'), die('die-v32-85'), 1, 'reversed', 'reversed')).toBeCloseTo(there, 9);
  });
});

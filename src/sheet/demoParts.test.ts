import { expect, it } from 'vitest';
import { bounds, signedArea } from '../geometry/index.js';
import { blank, demoParts, develop, featuresNearBends } from './index.js';

it('has five to six demo parts, each marked and with a blank of its own', () => {
  const parts = demoParts();
  expect(parts).toHaveLength(5);
  for (const part of parts) {
    expect(part.name).toMatch(/^Demo /);
    expect(part.assumptions.some(({ sentence }) => sentence.includes('invention'))).toBe(true);
    const flat = blank(develop(part, { name: 'K-factor', k: 0.44 }));
    expect(flat.ok, part.name).toBe(true);
    if (!flat.ok) continue;
    // holes lie inside their plates and stay off the bends by two thicknesses
    expect(flat.value.holes).toHaveLength(part.plates.reduce((sum, plate) => sum + plate.holes.length, 0));
    expect(featuresNearBends(part), part.name).toEqual([]);
    for (const plate of part.plates) {
      const [low, high] = bounds([plate.outline]);
      for (const hole of plate.holes) {
        const [a, b] = bounds([hole]);
        expect(a[0] > low[0] && a[1] > low[1] && b[0] < high[0] && b[1] < high[1], part.name).toBe(true);
        expect(signedArea(hole)).toBeLessThan(0);
      }
    }
  }
});

it('the shelf bracket: area by hand', () => {
  // thickness 3, radius 3, K 0.44: flats 114 and 74, allowance pi/2 (3 + 1.32); four rounds of 8 lose (1 - pi/4) 64 each;
  // holes 6.5, two of 5.5, and a slot 14 x 6.5
  const flat = blank(develop(demoParts()[0]!, { name: 'K-factor', k: 0.44 }));
  if (!flat.ok) throw new Error(flat.failure.sentence);
  const rounds = 4 * (1 - Math.PI / 4) * 64;
  const holes = (Math.PI / 4) * (6.5 ** 2 + 2 * 5.5 ** 2) + 7.5 * 6.5 + (Math.PI / 4) * 6.5 ** 2;
  expect(flat.value.area).toBeCloseTo(40 * (114 + 74 + (Math.PI / 2) * 4.32) - rounds - holes, 6);
});

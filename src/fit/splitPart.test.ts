import { describe, expect, it } from 'vitest';
import { defaultDimensions, develop, profilePart } from '../sheet/index.js';
import { splitPart } from './splitPart.js';

const made = profilePart({ name: 'step', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [30, 40, 50, 60], turns: [90, -90, 90] });
if (!made.ok) throw new Error(made.failure.sentence);
const part = made.value;
/** Size of a plate across the bend lines, which run along x over the width. */
const depths = (p: typeof part): number[] => p.plates.map(({ outline }) => {
  const [xs, ys] = [outline.map((v) => v.x), outline.map((v) => v.y)];
  const sizes = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
  return sizes.find((s) => Math.abs(s - 100) > 0.01)!;
});

describe('a part made in two', () => {
  it('at the middle bend: two angles with their own plates, bends and dimensions', () => {
    const whole = { ...part, dimensions: defaultDimensions(develop(part, { name: 'K-factor', k: 0.44 })) };
    const halves = splitPart(whole, 1);
    expect(halves.map((h) => [h.plates.length, h.bends.map((b) => b.id)])).toEqual([[2, ['b1']], [2, ['b3']]]);
    expect(halves.flatMap(depths)).toEqual(depths(part));
    for (const half of halves) {
      expect(half.bends[0]!.sides.map((s) => s.plate).sort()).toEqual([0, 1]);
      for (const d of half.dimensions!) for (const f of d.between) expect(f.plate).toBeLessThan(2);
    }
    expect(halves[0]!.dimensions!.length + halves[1]!.dimensions!.length).toBeLessThan(whole.dimensions.length);
  });

  it('what stands on a plate stays on that plate, and goes with its half', () => {
    const outline = [{ x: 10, y: 10, bulge: 0 }, { x: 14, y: 10, bulge: 0 }, { x: 14, y: 14, bulge: 0 }];
    const boss = (plate: number) => ({ kind: 'boss' as const, side: 'A' as const, plate, outline, height: 5 });
    const halves = splitPart({ ...part, formed: [boss(3), boss(0)] }, 1);
    expect(halves.map((h) => h.formed)).toEqual([[boss(0)], [boss(1)]]);
  });

  it('at an outer bend the flange that is left flat is no part to bend', () => {
    const rest = splitPart(part, 0);
    expect(rest.map((r) => r.bends.map((b) => b.id))).toEqual([['b2', 'b3']]);
    expect(rest[0]!.plates).toHaveLength(3);
  });
});

import { describe, expect, it } from 'vitest';
import { bounds, flatten, signedArea } from '../geometry/index.js';
import { contourFault } from './contourFault.js';
import { demoRack } from './demo.js';
import { crossingsAt, cutProfile, toolSlabs } from './toolSlabs.js';

const { punches, dies } = demoRack();
const straight = punches[0]!;

/** mulberry32 */
const seeded = (seed: number) => (): number => {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
};

describe('toolSlabs', () => {
  it('is one slab for a plain segment', () => {
    expect(toolSlabs(straight, { length: 300, count: 1 })).toEqual([{ from: 0, to: 300, profile: straight.profile }]);
  });

  it("puts a left ear's foot towards -along and a right ear's towards +along, cut at its height", () => {
    const [left, right] = straight.segments.filter((s) => s.ear !== undefined);
    const [foot, body] = toolSlabs(straight, left!);
    expect([foot!.from, foot!.to, body!.from, body!.to]).toEqual([0, 30, 30, 100]);
    expect(bounds([foot!.profile])[1][1]).toBeCloseTo(25, 9);
    expect(bounds([body!.profile])[1][1]).toBe(125);
    const [bodyRight, footRight] = toolSlabs(straight, right!);
    expect([bodyRight!.from, bodyRight!.to, footRight!.from, footRight!.to]).toEqual([0, 70, 70, 100]);
    expect(footRight!.profile).toEqual(foot!.profile);
    // by hand: nose sector and flanks up to the 12 mm body at 5.99 up, then 12 wide to 25
    const h = (42.5 * Math.PI) / 180;
    const [tx, ty] = [Math.cos(h), 1 - Math.sin(h)];
    const flank = ty + (6 - tx) / Math.tan(h);
    const nose = Math.PI / 2 - h - Math.sin(h) * Math.cos(h); // circular segment below the tangent points, radius 1
    const area = nose + (tx + 6) * (flank - ty) + 12 * (25 - flank);
    expect(signedArea(foot!.profile)).toBeCloseTo(area, 6);
  });

  it('cuts any profile into two simple outlines that add up (seed 20261125)', () => {
    const random = seeded(20261125);
    let cut = 0;
    for (const tool of [...punches, ...dies]) {
      const [[, low], [, high]] = bounds([tool.profile]);
      for (let n = 0; n < 12; n++) {
        // half of the cuts near the tip or the top, where the arcs are
        const up = tool.kind === 'punch' ? low + random() * (n % 2 ? 1.2 : high) : high - random() * (n % 2 ? 3 : -low);
        if (crossingsAt(tool.profile, up) !== 2) continue;
        cut++;
        const [under, over] = [cutProfile(tool.profile, up, 'under'), cutProfile(tool.profile, up, 'over')];
        expect(signedArea(under) + signedArea(over), `${tool.id} at ${up}`).toBeCloseTo(signedArea(tool.profile), 6);
        expect(bounds([under])[1][1]).toBeCloseTo(up, 6);
        expect(bounds([over])[0][1]).toBeCloseTo(up, 6);
        if (signedArea(under) > 1) expect(contourFault(under)).toBeUndefined();
        if (signedArea(over) > 1) expect(contourFault(over)).toBeUndefined();
      }
    }
    expect(cut).toBeGreaterThan(100);
  });

  it('counts how often a height is passed: four times through a V, twice below it', () => {
    const v12 = dies.find((d) => d.id === 'die-v12-85')!.profile;
    expect(crossingsAt(v12, -2)).toBe(4);
    expect(crossingsAt(v12, -20)).toBe(2);
    expect(crossingsAt(v12, 1)).toBe(0);
    expect(flatten(v12, 0.01).length).toBeGreaterThan(v12.length);
  });
});

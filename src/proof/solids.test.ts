import { beforeAll, describe, expect, it } from 'vitest';
import { type Contour, circle, vertex } from '../geometry/index.js';
import type { Bend } from '../sheet/index.js';
import type { BendShape } from './bendShape.js';
import { type Kernel, loadKernel } from './engine.js';
import { plateSolid } from './plateSolid.js';
import { zoneMeshFor, zoneSolid } from './zoneSolid.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const polygon = (...points: readonly (readonly [number, number])[]): Contour => points.map(([x, y]) => vertex(x, y));

const bendOver = (zone: readonly Contour[]): Bend => ({
  id: 'b1',
  kind: 'bend',
  sides: [
    { plate: 0, line: { from: [0, 0], to: [100, 0] } },
    { plate: 1, line: { from: [0, 0], to: [100, 0] } },
  ],
  bendAngle: 90,
  direction: 'A',
  insideRadius: 2,
  zone,
});

const shape = (degrees: number, s: 1 | -1): BendShape => ({
  a: 4.4,
  neutral: 4.4 / ((degrees * Math.PI) / 180) - 2,
  thickness: 2,
  s,
  final: (degrees * Math.PI) / 180,
});

describe('plates', () => {
  it('a plate with a round hole has the volume of (area - pi r^2) t, within the chords', () => {
    const solid = plateSolid(kernel, polygon([0, 0], [100, 0], [100, 60], [0, 60]), [circle(30, 30, 10, true)], 2);
    const exact = (6000 - Math.PI * 100) * 2;
    // the hole's polygon lies inside the circle by at most 0.02 over its length
    expect(solid.volume()).toBeGreaterThanOrEqual(exact);
    expect(solid.volume()).toBeLessThan(exact + 2 * Math.PI * 10 * 0.02 * 2);
    const box = solid.boundingBox();
    expect([box.min[2], box.max[2]]).toEqual([-1, 1]);
    solid.delete();
  });
});

describe('bend zones', () => {
  const full = polygon([0, 0], [100, 0], [100, 1], [0, 1]);
  // a strip at angle x between the radii Ri and Ri + t: x ((Ri + t)^2 - Ri^2) / 2 = x t (Ri + t / 2) per mm
  for (const s of [1, -1] as const) {
    for (const [final, x] of [[90, 90], [90, 30], [90, 0], [150, 150]] as const) {
      it(`a zone of ${final} degrees bend angle at ${x}, direction ${s}: x t (Ri + t/2) L`, () => {
        const k = shape(final, s);
        const radians = (x * Math.PI) / 180;
        const inside = x === 0 ? 0 : 4.4 / radians - k.neutral;
        const exact = x === 0 ? 4.4 * 2 * 100 : radians * 2 * (inside + 1) * 100;
        const solid = zoneSolid(kernel, zoneMeshFor(bendOver([full]), k, k.final), k, radians);
        expect(solid.status()).toBe('NoError');
        const face = x === 0 ? 0 : radians * (inside + 2) * 100;
        expect(Math.abs(solid.volume() - exact)).toBeLessThan(face * 0.02 + 1e-3);
        solid.delete();
      });
    }
  }

  it('holes and notches are left out of the volume, at every angle in proportion', () => {
    // notch 20 wide through the middle half of the arc at the far end, hole 10 x half the arc, mitred near end
    const zone: readonly Contour[] = [
      polygon([0, 0], [100, 0], [100, 0.25], [80, 0.25], [80, 0.75], [100, 0.75], [100, 1], [5, 1]),
      polygon([40, 0.3], [40, 0.8], [50, 0.8], [50, 0.3]),
    ];
    // shares of u times f: 100 - 10 (notch) - 5 (hole) - 2.5 (mitre)
    const shareArea = 82.5;
    for (const x of [0.4, 1, Math.PI / 2]) {
      const k = shape(90, 1);
      const inside = 4.4 / x - k.neutral;
      const solid = zoneSolid(kernel, zoneMeshFor(bendOver(zone), k, k.final), k, x);
      expect(solid.status()).toBe('NoError');
      expect(solid.genus()).toBe(1);
      expect(Math.abs(solid.volume() - shareArea * x * 2 * (inside + 1))).toBeLessThan(x * (inside + 2) * 100 * 0.02);
      solid.delete();
    }
  });

  it('direction A curves up from side 0: its far end stands at (Rm sin x, Rm (1 - cos x)) by hand', () => {
    const k = shape(90, 1);
    const solid = zoneSolid(kernel, zoneMeshFor(bendOver([full]), k, k.final), k, Math.PI / 2);
    const box = solid.boundingBox();
    // Ri = 2, t = 2, middle plane of side 0 at 0: outer face at -1, centre at +3, outer radius 4
    expect(box.min[2]).toBeCloseTo(-1, 4);
    expect(box.max[2]).toBeCloseTo(3, 4);
    expect(box.max[1]).toBeCloseTo(4, 4);
    expect(box.min[1]).toBeCloseTo(0, 4);
    solid.delete();
  });
});

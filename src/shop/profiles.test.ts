import { describe, expect, it } from 'vitest';
import { type Vec2, arcOf, bounds, flatten, signedArea } from '../geometry/index.js';
import { demoRack } from './demo.js';
import { mirrorProfile } from './mirrorProfile.js';
import { halfOpening } from './profiles.js';

const { punches, dies } = demoRack();
const punch = (id: string) => punches.find((p) => p.id === id)!;

const inside = (outline: readonly Vec2[], [x, y]: Vec2): boolean =>
  outline.filter((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    return a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
  }).length % 2 === 1;

/** Points every 0.25 mm along an outline. */
const sampled = (outline: readonly Vec2[]): Vec2[] =>
  outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    const n = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 0.25);
    return Array.from({ length: n }, (_, k): Vec2 => [a[0] + ((b[0] - a[0]) * k) / n, a[1] + ((b[1] - a[1]) * k) / n]);
  });

/**
 * The made leg of a channel at the second bend, at the included angle under load: web (outside) and leg (outside) in
 * t thick sheet, sharp corners, the inside corner at the punch tip, web to the front. By hand: half the included angle
 * h from upright; the web's inner face runs web - 2 t along (-sin h, cos h), the leg's then leg - t along (cos h, sin h),
 * and its metal lies t to the other side, along (-sin h, cos h).
 */
const legPoints = (web: number, leg: number, t: number, included: number): Vec2[] => {
  const h = (included / 2) * (Math.PI / 180);
  const points: Vec2[] = [];
  for (let s = 0; s <= leg - t; s += 0.25) {
    for (const out of [0, t]) {
      points.push([
        -(web - 2 * t + out) * Math.sin(h) + s * Math.cos(h),
        (web - 2 * t + out) * Math.cos(h) + s * Math.sin(h),
      ]);
    }
  }
  return points;
};

/** The least distance from a leg to a punch; negative when a point of the leg lies in it. */
const room = (id: string, leg: readonly Vec2[]): number => {
  const outline = flatten(punch(id).profile, 0.01);
  if (leg.some((p) => inside(outline, p))) return -1;
  let least = Infinity;
  for (const q of sampled(outline)) for (const p of leg) least = Math.min(least, Math.hypot(p[0] - q[0], p[1] - q[1]));
  return least;
};

describe('punch profiles', () => {
  it('carry their nose on an arc of the tip radius about (0, tip radius), flanks tangent to it', () => {
    for (const p of punches.filter((q) => q.shape !== 'flattening' && q.shape !== 'offset')) {
      const [tip, back] = [p.profile[0]!, p.profile[1]!];
      const { centre, radius } = arcOf([tip.x, tip.y], [back.x, back.y], tip.bulge);
      expect(radius).toBeCloseTo(p.tipRadius, 9);
      expect(centre[0]).toBeCloseTo(0, 9);
      expect(centre[1]).toBeCloseTo(p.tipRadius, 9);
      const next = p.profile[2]!;
      const flank = Math.atan2(next.x - back.x, next.y - back.y) * (180 / Math.PI);
      expect(flank).toBeCloseTo(p.includedAngle / 2, 9);
      expect(bounds([p.profile])[0][1]).toBe(0);
    }
  });

  it("let P2's leg (web 60, legs 70, 1.5 thick) past the gooseneck but not past a straight punch", () => {
    // 90 degrees released; under load down to 86 degrees included
    for (const included of [90, 88, 86]) {
      const leg = legPoints(60, 70, 1.5, included);
      expect(room('gooseneck', leg)).toBeGreaterThan(2);
      expect(room('gooseneck-deep', leg)).toBeGreaterThan(2);
      expect(room('straight-r1', leg)).toBe(-1);
    }
  });

  it('stand back by more than 7 mm + 1 mm + 1.5 mm all the way from 40 mm to 92 mm up', () => {
    for (const id of ['gooseneck', 'gooseneck-deep']) {
      const outline = flatten(punch(id).profile, 0.01);
      for (let up = id === 'gooseneck' ? 40 : 52; up <= 93; up += 0.5) {
        for (let x = -60; x <= 9.5; x += 0.5) expect(inside(outline, [x, up]), `${id} at (${x}, ${up})`).toBe(false);
      }
    }
  });

  it('do not let the deeper channel past (web 40, legs 80: 28 mm past the plane), whichever gooseneck', () => {
    const leg = legPoints(40, 80, 1.5, 88);
    expect(room('gooseneck', leg)).toBe(-1);
    expect(room('gooseneck-deep', leg)).toBeLessThan(1);
  });
});

describe('die profiles', () => {
  it('open at the half opening of docs/kinematics.md and have walls at the included angle', () => {
    // V 16, 85 degrees included, shoulder radius 1.6: 8 + 1.6 tan(45 - 21.25) = 8.70402 mm
    const die = dies.find((d) => d.id === 'die-v16-85')!;
    expect(halfOpening(die)).toBeCloseTo(8.70402, 4);
    expect(die.profile.some((v) => Math.abs(v.x - 8.70402) < 1e-4 && v.y === 0)).toBe(true);
    const outline = flatten(die.profile, 0.001);
    // on the sharp walls' lines x = 8 - depth tan 42.5, clear of the shoulder arcs: metal beside, air within
    for (const depth of [2, 4, 6]) {
      const wall = 8 - depth * Math.tan(42.5 * (Math.PI / 180));
      for (const side of [-1, 1]) {
        expect(inside(outline, [side * (wall + 0.001), -depth])).toBe(true);
        expect(inside(outline, [side * (wall - 0.001), -depth])).toBe(false);
      }
    }
    // 'tangent' measures to where the arcs begin
    expect(halfOpening({ ...die, vConvention: 'tangent' })).toBe(8);
  });
});

describe('mirrorProfile', () => {
  it('exchanges front and back, keeps the area and the sense, and undoes itself', () => {
    for (const t of [...punches, ...dies]) {
      const [[x0, y0], [x1, y1]] = bounds([t.profile]);
      const other = mirrorProfile(t.profile);
      const [[u0, v0], [u1, v1]] = bounds([other]);
      expect([u0, v0, u1, v1].map((n) => n.toFixed(9))).toEqual([-x1, y0, -x0, y1].map((n) => n.toFixed(9)));
      expect(signedArea(other)).toBeCloseTo(signedArea(t.profile), 6);
      const outline = flatten(t.profile, 0.01);
      const mirrored = flatten(other, 0.01);
      for (let x = -40; x <= 60; x += 7.3) {
        for (let y = -88; y <= 210; y += 9.7) expect(inside(mirrored, [-x, y])).toBe(inside(outline, [x, y]));
      }
      expect(flatten(mirrorProfile(other), 0.01).length).toBe(outline.length);
    }
  });
});

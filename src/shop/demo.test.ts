import { describe, expect, it } from 'vitest';
import { signedArea } from '../geometry/index.js';
import { demoFloor, demoRack } from './demo.js';
import type { Segment } from './tool.js';

const { punches, dies, risers } = demoRack();

/** Every length that plain segments make up, by trying each piece there is: true at its index in mm. */
const composable = (segments: readonly Segment[]): boolean[] => {
  const pieces = segments.filter((s) => s.ear === undefined).flatMap((s) => Array<number>(s.count).fill(s.length));
  const reached = Array<boolean>(pieces.reduce((a, b) => a + b, 0) + 1).fill(false);
  reached[0] = true;
  for (const piece of pieces) {
    for (let length = reached.length - 1; length >= piece; length--) {
      reached[length] ||= reached[length - piece]!;
    }
  }
  return reached;
};

const missing = (segments: readonly Segment[], from: number, to: number, step: number): number[] => {
  const reached = composable(segments);
  const out: number[] = [];
  for (let length = from; length <= to; length += step) if (!reached[length]) out.push(length);
  return out;
};

describe('the demo floor', () => {
  it('is five machines that the parser accepts, all marked demo', () => {
    expect(demoFloor().map((m) => m.id)).toEqual(['small-fast', 'general', 'long-fixed-r', 'deep-throat', 'worn']);
    expect(demoFloor().every((m) => m.demo && m.name.includes('demo'))).toBe(true);
  });

  it('has fixed R where the nose meets the sheet on the dies up to V 24, sheet 0.5 to 6 mm', () => {
    const { r, finger } = demoFloor()[2]!.gauge;
    const nose = finger.faces.find((f) => f.behind === 0)!;
    for (const die of dies.filter((d) => d.shape === 'V' && d.v <= 24 && d.includedAngle === 85)) {
      expect(r.drive === 'fixed' && r.at + nose.from).toBeLessThanOrEqual(die.height);
      expect(r.drive === 'fixed' && r.at + nose.to).toBeGreaterThanOrEqual(die.height + 6);
    }
  });

  it('keeps fingers off the dies: nothing under the reference within 60 mm of the nose', () => {
    for (const m of demoFloor()) {
      for (const v of m.gauge.finger.profile) if (v.x < 60) expect(v.y).toBeGreaterThanOrEqual(0);
      for (const v of m.gauge.beam) expect(v.x > 60 && v.y < 0).toBe(true);
    }
  });

  it('can hold the straight punch on a V 12 with room for sheet, and reaches its stroke, on every machine', () => {
    const stack = 125 + 90;
    for (const m of demoFloor()) {
      expect(m.openHeight - stack).toBeGreaterThanOrEqual(100);
      // the tip must come 4 mm below the die top for 90 degrees of 1.5 mm over V 12 (docs/kinematics.md)
      expect(m.shutHeight).toBeLessThanOrEqual(stack - 4);
      expect(m.clampFamilies).toContain('tang A');
      expect(m.seatFamilies).toContain('seat A');
    }
  });
});

describe('the demo rack', () => {
  it('is all marked demo and priced', () => {
    expect([...punches, ...dies].every((t) => t.demo && t.price !== undefined && t.price > 0)).toBe(true);
    expect(risers.map((r) => r.height)).toEqual([5, 10, 20, 30, 50]);
  });

  it.each([
    ['straight-r1', 4000, 5],
    ['straight-r3', 4000, 5],
    ['gooseneck', 3000, 5],
    ['gooseneck-deep', 3000, 5],
    ['acute-30', 3000, 5],
    ['acute-60', 3000, 5],
    ['flattening', 3000, 5],
    ['die-v8-85', 4000, 5],
    ['die-v32-85', 4000, 5],
    ['die-v80-80', 4000, 50],
    ['anvil', 3000, 5],
  ])('%s makes up any length to %d mm in steps of %d mm', (id, to, step) => {
    const tool = [...punches, ...dies].find((t) => t.id === id)!;
    expect(missing(tool.segments, Math.max(20, step), to, step)).toEqual([]);
  });

  it('weighs what its cross-section weighs, within a tenth for tangs, holes and seats (steel, 7.85 g/cm3)', () => {
    for (const t of [...punches, ...dies]) {
      const fromArea = signedArea(t.profile) * 7.85e-3;
      expect(Math.abs(t.weight / fromArea - 1), t.id).toBeLessThan(0.1);
    }
  });

  it('leaves 4 degrees for over-bend past 90 under the noses and in the dies for square bends', () => {
    for (const p of punches.filter((q) => q.shape === 'straight' || q.shape === 'gooseneck')) {
      expect(90 - p.includedAngle).toBeGreaterThanOrEqual(4);
    }
    for (const d of dies.filter((q) => q.shape === 'V')) expect(90 - d.includedAngle).toBeGreaterThanOrEqual(4);
  });
});

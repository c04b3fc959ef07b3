import { describe, expect, it } from 'vitest';
import { type Contour, vertex } from '../geometry/index.js';
import { demoRack } from './demo.js';
import { inventedDie, inventedGooseneck, onAdapter } from './inventedTools.js';
import type { Punch } from './tool.js';

const straight = demoRack().punches.find((p) => p.shape === 'straight')!;
const topOf = (profile: Contour): number => Math.max(...profile.map(({ y }) => y));

describe('a punch on an adapter', () => {
  it('has its whole top raised, drawn up to a hundredth off the height too', () => {
    // 0.005 mm short of the stated height, as rounding in a drawing leaves it
    const short: Punch = { ...straight, profile: straight.profile.map((v) => (v.y === straight.height ? { ...v, y: v.y - 0.005 } : v)) };
    for (const punch of [straight, short]) {
      const raised = onAdapter(punch, 'tang B', 60)!;
      expect(raised.height).toBe(straight.height + 60);
      expect(topOf(raised.profile)).toBeCloseTo(topOf(punch.profile) + 60, 9);
      expect(raised.profile.filter(({ y }) => y > straight.height)).toHaveLength(2);
    }
  });

  it('keeps a rounded corner where it was and is no wider over it', () => {
    // quarter arcs of 2 mm under the top at 125, counter-clockwise: bulge tan(90 / 4 degrees)
    const bulge = Math.tan(Math.PI / 8);
    const rounded: Punch = { ...straight, profile: [vertex(0, 0), vertex(10, 20), vertex(10, straight.height - 2, bulge), vertex(8, straight.height), vertex(-8, straight.height, bulge), vertex(-10, straight.height - 2), vertex(-10, 20)] };
    expect(onAdapter(rounded, 'tang B', 60)!.profile).toEqual([
      vertex(0, 0), vertex(10, 20), vertex(10, straight.height - 2, bulge), vertex(8, straight.height), vertex(8, straight.height + 60), vertex(-8, straight.height + 60),
      vertex(-8, straight.height, bulge), vertex(-10, straight.height - 2), vertex(-10, 20),
    ]);
  });

  it('is none where there is no edge at the top to hang from', () => {
    const pointed: Punch = { ...straight, profile: [vertex(0, 0), vertex(10, 20), vertex(0, straight.height), vertex(-10, 20)] };
    expect(onAdapter(pointed, 'tang B', 60)).toBeNull();
  });
});

it('tools beyond the rack that differ have ids and names of their own', () => {
  const necks = [['tang A', 1], ['tang B', 1], ['tang A', 3]] as const;
  const tools = [
    ...necks.map(([tang, tipRadius]) => inventedGooseneck({ relief: 40, height: 220, tipRadius, tang, price: 9500 })!),
    ...['seat A', 'seat B'].map((seat) => inventedDie({ v: 12, includedAngle: 85, height: 90, seat, price: 3600 })!),
    ...['tang B', 'tang C'].map((tang) => onAdapter(straight, tang, 60)!),
  ];
  expect(new Set(tools.map(({ id }) => id)).size).toBe(tools.length);
  expect(new Set(tools.map(({ name }) => name)).size).toBe(tools.length);
  expect(tools[1]!.name).toBe('Gooseneck beyond the rack, tang B, tip radius 1 mm, relief 40 mm, height 220 mm');
});

import { expect, it } from 'vitest';
import { bounds, signedArea, vertex } from '../geometry/index.js';
import { parseRack } from './parseRack.js';
import { placedSection } from './placedSection.js';

/** A wedge with a tip of radius 2 drawn as one arc from (-2, 2) to (2, 2) about (0, 2), standing at (30, 50) on its drawing; 100 high. */
const wedge = [vertex(28, 52, 1), vertex(32, 52), vertex(36, 60), vertex(36, 150), vertex(24, 150), vertex(24, 60)];

it('a punch drawn with its tip as one arc gets its lowest point at the origin, as a corner', () => {
  const placed = placedSection(wedge, 'punch');
  expect(placed).toHaveLength(7);
  expect(placed[1]).toMatchObject({ x: 0, y: 0 });
  // a quarter circle on both sides: tan(90 / 4)
  expect(placed[0]!.bulge).toBeCloseTo(Math.SQRT2 - 1, 9);
  expect(placed[1]!.bulge).toBeCloseTo(Math.SQRT2 - 1, 9);
  expect(bounds([placed])).toEqual([[-6, 0], [6, 100]]);
  expect(signedArea(placed)).toBeCloseTo(signedArea(wedge), 6);
  const profile = { shape: 'contour', corners: placed.map((v) => [v.x, v.y, v.bulge]) };
  const punch = { kind: 'punch', id: 'p', name: 'P', demo: false, tang: 'tang A', shape: 'straight', tipRadius: 2, includedAngle: 60, height: 100, profile, rating: 500, reversible: true, segments: [{ length: 100, count: 1 }], weight: 9 };
  expect(parseRack({ id: 'r', name: 'R', demo: false, currency: 'EUR', punches: [punch], dies: [], risers: [] }).ok).toBe(true);
});

it('a flat face gets the corner in its middle; a die the middle of its top', () => {
  const block = [vertex(10, 5), vertex(30, 5), vertex(30, 65), vertex(10, 65)];
  expect(placedSection(block, 'punch').map((v) => [v.x, v.y])).toEqual([[-10, 0], [0, 0], [10, 0], [10, 60], [-10, 60]]);
  const vee = [vertex(0, 0), vertex(40, 0), vertex(40, 60), vertex(26, 60), vertex(20, 50), vertex(14, 60), vertex(0, 60)];
  expect(placedSection(vee, 'die').map((v) => [v.x, v.y])).toEqual([[-20, -60], [20, -60], [20, 0], [6, 0], [0, -10], [-6, 0], [-20, 0]]);
  expect(placedSection(vee, 'machine')).toBe(vee);
});

import { expect, it } from 'vitest';
import { circle } from '../geometry/index.js';
import { type Part, featuresNearBends, polygon, profilePart } from './index.js';

const withHoles = (centres: readonly (readonly [number, number])[]): Part => {
  const built = profilePart({ name: 'L', thickness: 2, insideRadius: 3, width: 100, flanges: [40, 60], turns: [90] });
  if (!built.ok) throw new Error(built.failure.sentence);
  const [plate, ...rest] = built.value.plates;
  return { ...built.value, plates: [{ ...plate!, holes: centres.map(([x, y]) => circle(x, y, 3, true)) }, ...rest] };
};

it('lists holes nearer than two thicknesses to the tangent line, nearest first', () => {
  // tangent line at y = 35: hole edges at 35 - y - 3: 4.5, 2 and 1 away; limit 4
  const near = featuresNearBends(withHoles([[20, 27.5], [50, 30], [80, 31]]));
  expect(near.map((feature) => [feature.hole, feature.bend])).toEqual([[2, 'b1'], [1, 'b1']]);
  expect(near[0]!.distance).toBeCloseTo(1, 2);
  expect(near[1]!.distance).toBeCloseTo(2, 2);
  expect(near[0]!.limit).toBe(4);
});

it('measures to the end of a short bend, not to its line beyond', () => {
  const part = withHoles([[50, 30]]);
  const bend = part.bends[0]!;
  const cut = { ...bend, sides: [{ plate: 0, line: { from: [0, 35], to: [40, 35] } }, { plate: 1, line: { from: [0, 0], to: [40, 0] } }] as const };
  // from (40, 35) to the centre (50, 30): sqrt(125) = 11.18, less 3
  const [feature] = featuresNearBends({ ...part, bends: [cut] }, () => 10);
  expect(feature!.distance).toBeCloseTo(Math.sqrt(125) - 3, 2);
});

it('a hole in the bend itself is at 0', () => {
  const part = withHoles([]);
  const bend = part.bends[0]!;
  const zone = [...bend.zone, polygon([[40, 0.2], [40, 0.8], [60, 0.8], [60, 0.2]])];
  expect(featuresNearBends({ ...part, bends: [{ ...bend, zone }] })).toEqual([{ plate: 0, bend: 'b1', distance: 0, limit: 4 }]);
});

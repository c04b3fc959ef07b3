import { expect, it } from 'vitest';
import { IDENTITY, type Vec3 } from '../../geometry/index.js';
import { develop, fold, profilePart } from '../../sheet/index.js';
import { pickFeature } from './pickFeature.js';

// an angle: base 40 outside along y, flange 60, t 2, r 2, 100 along x; the base lies level, the flange stands up from it
const made = profilePart({ name: 'angle', thickness: 2, insideRadius: 2, width: 100, flanges: [40, 60], turns: [90] });
if (!made.ok) throw new Error(made.failure.sentence);
const sheet = develop(made.value, { name: 'K-factor', k: 0.44 });
const { poses } = fold(sheet, [90], 0);
const ys = made.value.plates[0]!.outline.map((v) => v.y);
const [y0, y1] = [Math.min(...ys), Math.max(...ys)];
const x = made.value.plates[0]!.outline.reduce((sum, v) => sum + v.x / made.value.plates[0]!.outline.length, 0);
const down = (y: number): { origin: Vec3; direction: Vec3 } => ({ origin: [x, y, 500], direction: [0, 0, -1] });

it('takes the face that is nearest to the eye', () => {
  expect(poses[0]).toEqual(IDENTITY);
  expect(pickFeature(sheet, poses, down((y0 + y1) / 2), 1)).toEqual({ kind: 'face', plate: 0, side: 'A' });
  expect(pickFeature(sheet, poses, { origin: [x, (y0 + y1) / 2, -500], direction: [0, 0, 1] }, 1)).toEqual({ kind: 'face', plate: 0, side: 'B' });
});

it('takes a free edge near by before the face, and never the edge at the bend', () => {
  // the base's free end lies at y0 (flange 0 begins the profile), its bend at y1
  expect(pickFeature(sheet, poses, down(y0 + 1.5), 2)).toMatchObject({ kind: 'edge', plate: 0, at: [x, y0] });
  expect(pickFeature(sheet, poses, down(y1 - 0.5), 2)).toMatchObject({ kind: 'face', plate: 0 });
});

it('takes nothing beside the part', () => {
  expect(pickFeature(sheet, poses, down(y0 - 50), 2)).toBeNull();
});

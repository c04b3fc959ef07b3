import { expect, it } from 'vitest';
import { loadKernel } from './engine.js';
import { sharedDepth } from './sharedDepth.js';

it('measures a sliver askew to the axes by its own thickness, and the deepest of several', async () => {
  const kernel = await loadKernel();
  const cube = kernel.Manifold.cube([10, 10, 10]);
  const mitred = cube.rotate([0, 0, 45]).translate([10 * Math.SQRT1_2, -10 * Math.SQRT1_2, 0]);
  // face to face at x + y = 0 turned plane: the second cube's face and a copy moved by 0.2 into it
  const copy = mitred.translate([-(10 - 0.2) * Math.SQRT1_2, -(10 - 0.2) * Math.SQRT1_2, 0]);
  expect(sharedDepth(mitred, copy)).toBeCloseTo(0.2, 5);
  expect(sharedDepth(cube, cube.translate([3, 9.5, 0]))).toBeCloseTo(0.5, 5);
  // two pieces: 0.1 deep on one side, 0.4 on the other
  const pair = kernel.Manifold.union([cube.translate([-9.9, 0, 0]), cube.translate([9.6, 0, 0])]);
  expect(sharedDepth(cube, pair)).toBeCloseTo(0.4, 5);
  expect(sharedDepth(cube, cube.translate([20, 0, 0]))).toBe(0);
});

import { expect, it } from 'vitest';
import { channelTrial } from '../papers/fixture.js';
import { reachBehind } from './reachBehind.js';

/** mm, of the channel: legs of 40 and a web of 80 outside, radius and thickness 1.5, neutral line at 0.4 t. */
const [T, R] = [1.5, 1.5];
const ALLOWANCE = (Math.PI / 2) * (R + 0.4 * T);
const [LEG, WEB] = [40 - R - T, 80 - 2 * (R + T)];

// by hand, at the middle of the thickness: web and half the running bend, then the other bend's arc and its leg at the angle it has
it.each([
  [90, WEB + ALLOWANCE / 2 + R + T / 2],
  [0, WEB + ALLOWANCE / 2 + ALLOWANCE + LEG],
  [45, WEB + ALLOWANCE / 2 + (ALLOWANCE / (Math.PI / 4) + 0.1 * T + LEG) * Math.SQRT1_2],
])('a bend that the step before has left at %d degrees of bend angle', (angle, reach) => {
  const trial = channelTrial();
  const [first, second] = trial.steps;
  const found = reachBehind({ ...trial, steps: [{ ...first!, bendAngle: angle }, second!] }, { ...second!, gaugeSide: 0 });
  expect(found.reach).toBeCloseTo(reach, 6);
  expect(found.width).toBeCloseTo(200, 6);
});

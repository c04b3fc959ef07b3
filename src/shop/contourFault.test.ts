import { describe, expect, it } from 'vitest';
import { vertex } from '../geometry/index.js';
import { contourFault } from './contourFault.js';

const outline = (...corners: [number, number, number?][]) => corners.map(([x, y, b]) => vertex(x, y, b ?? 0));

describe('contourFault', () => {
  it('lets a simple counter-clockwise outline pass, with and without arcs', () => {
    expect(contourFault(outline([0, 0], [10, 0], [10, 10], [0, 10]))).toBeUndefined();
    expect(contourFault(outline([-5, 0, 1], [5, 0, 1]))).toBeUndefined();
  });
  it.each([
    ['a bow tie', outline([0, 0], [10, 10], [10, 0], [0, 10]), /crosses itself/],
    ['an arc that bulges through the far edge', outline([0, 0, -1], [10, 0], [10, 2], [0, 2]), /crosses itself/],
    ['a corner that touches another edge', outline([0, 0], [10, 0], [10, 10], [5, 0], [0, 10]), /crosses itself/],
    ['a spike', outline([0, 0], [10, 0], [20, 0], [10, 0], [10, 10], [0, 10]), /folds back|crosses itself|repeats/],
    ['a corner named twice', outline([0, 0], [10, 0], [10, 0], [10, 10]), /repeats the corner \(10, 0\)/],
    ['a clockwise outline', outline([0, 0], [0, 10], [10, 10], [10, 0]), /clockwise/],
    ['a sliver', outline([0, 0], [10, 0], [10, 0.1]), /less than 1 mm2/],
  ])('refuses %s', (_, contour, sentence) => {
    expect(contourFault(contour)).toMatch(sentence);
  });
});

import { expect, it } from 'vitest';
import type { Vec3 } from '../geometry/index.js';
import { extentOf, type Item } from './picture.js';
import { pictureToSvg } from './pictureToSvg.js';
import { refusalPicture } from './refusalPicture.js';

// a cube of 10 mm; its top is the face to be seen
const corner = (i: number): Vec3 => [i & 1 ? 10 : 0, i & 2 ? 10 : 0, i & 4 ? 10 : 0];
const edges = [[0, 1], [1, 3], [3, 2], [2, 0], [4, 5], [5, 7], [7, 6], [6, 4], [0, 4], [1, 5], [3, 7], [2, 6]].map((ends) => ends.map(corner));
const bottom = { face: 3, normal: [0, 0, -1] as const, loops: [[0, 2, 3, 1].map(corner)] };
const side = { face: 5, loops: [[0, 1, 5, 4].map(corner)] };

const named = (items: readonly Item[]): string[] => items.flatMap((it) => (it.kind === 'group' ? [it.name] : []));

it('draws all edges and marks the faces by number, seen from where they show', () => {
  const picture = refusalPicture({ edges, marked: [bottom, side] }, 'No sheet.');
  expect(named(picture.items)).toEqual(['face 3', 'face 5']);
  const svg = pictureToSvg(picture);
  expect(svg).toContain('No sheet.');
  expect(svg).toMatch(/face 3<.*face 5</);
  expect(svg.match(/pen-warning/g)).toHaveLength(2);
  const [low, high] = extentOf(picture.items);
  expect(Math.min(...low)).toBeGreaterThanOrEqual(0);
  expect(high[0]).toBeLessThanOrEqual(picture.width);
  expect(high[1]).toBeLessThanOrEqual(picture.height);
  // the bottom is seen from below: its corner nearest to the eye, 45 degrees about, lies lower on the paper than the top's
  const strokes = picture.items[0]!;
  expect(strokes.kind === 'strokes' && strokes.lines).toHaveLength(12);
});

it('draws a body of which no face is named', () => {
  expect(named(refusalPicture({ edges, marked: [] }, 'No sheet.').items)).toEqual([]);
});

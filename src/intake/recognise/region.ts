import { Clipper, FillRule, type PathsD } from 'clipper2-ts';
import type { Vec2 } from '../../geometry/index.js';
import { CLIP_DIGITS } from '../tolerances.js';

/** Polygons in one plane; filled where the winding number is not zero. */
export type Region = readonly (readonly Vec2[])[];

const toPaths = (region: Region): PathsD => region.map((loop) => loop.map(([x, y]) => ({ x, y })));
const fromPaths = (paths: PathsD): Vec2[][] => paths.map((path) => path.map((p): Vec2 => [p.x, p.y]));

export const intersectRegions = (a: Region, b: Region): Vec2[][] =>
  fromPaths(Clipper.intersectD(toPaths(a), toPaths(b), FillRule.NonZero, CLIP_DIGITS));

export const subtractRegions = (a: Region, b: Region): Vec2[][] =>
  fromPaths(Clipper.differenceD(toPaths(a), toPaths(b), FillRule.NonZero, CLIP_DIGITS));

export const uniteRegions = (a: Region, b: Region): Vec2[][] =>
  fromPaths(Clipper.unionD(toPaths(a), toPaths(b), FillRule.NonZero, CLIP_DIGITS));

/** Area of the loops, holes (clockwise) taken off. */
export const regionArea = (region: Region): number =>
  region.reduce((sum, loop) => {
    let twice = 0;
    loop.forEach((p, i) => {
      const q = loop[(i + 1) % loop.length]!;
      twice += p[0] * q[1] - p[1] * q[0];
    });
    return sum + twice / 2;
  }, 0);

export const overlapArea = (a: Region, b: Region): number => Math.abs(regionArea(intersectRegions(a, b)));

export type Box = readonly [number, number, number, number];

export const boxOf = (region: Region): Box => {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const loop of region) {
    for (const [x, y] of loop) [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
  }
  return [x0, y0, x1, y1];
};

export const boxesOverlap = (a: Box, b: Box): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

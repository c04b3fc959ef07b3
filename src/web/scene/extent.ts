import type { Vec3 } from '../../geometry/index.js';

/** Degrees round from the operator's own view to the right, and up. */
export interface Direction {
  readonly round: number;
  readonly up: number;
}

/** What a view must hold: its middle as first seen, half its width and height then (mm), and a ball about the middle that holds all. */
export interface Extent {
  readonly centre: Vec3;
  readonly half: readonly [number, number];
  readonly radius: number;
}

const RADIANS = Math.PI / 180;

/** The screen's axes in the scene: to the right, up, and towards the eye. */
export const axesOf = ({ round, up }: Direction): { readonly right: Vec3; readonly over: Vec3; readonly towards: Vec3 } => {
  const [ca, sa, ce, se] = [Math.cos(round * RADIANS), Math.sin(round * RADIANS), Math.cos(up * RADIANS), Math.sin(up * RADIANS)];
  return { right: [ca, sa, 0], over: [-sa * se, ca * se, ce], towards: [sa * ce, -ca * ce, se] };
};

/** The extent of all the points given (three numbers each), seen from `from`. */
export const extentOf = (from: Direction, ...lists: readonly (readonly number[])[]): Extent => {
  const { right, over, towards } = axesOf(from);
  const axes = [right, over, towards];
  const [low, high] = [[Infinity, Infinity, Infinity], [-Infinity, -Infinity, -Infinity]];
  for (const list of lists) {
    for (let i = 0; i < list.length; i += 3) {
      axes.forEach((axis, k) => {
        const v = axis[0] * list[i]! + axis[1] * list[i + 1]! + axis[2] * list[i + 2]!;
        low[k] = Math.min(low[k]!, v);
        high[k] = Math.max(high[k]!, v);
      });
    }
  }
  if (!Number.isFinite(low[0]!)) return { centre: [0, 0, 0], half: [1, 1], radius: 1 };
  const middle = axes.map((_, k) => (low[k]! + high[k]!) / 2);
  const half = axes.map((_, k) => Math.max((high[k]! - low[k]!) / 2, 0.5));
  const along = (k: 0 | 1 | 2): number => axes.reduce((sum, axis, i) => sum + axis[k] * middle[i]!, 0);
  return { centre: [along(0), along(1), along(2)], half: [half[0]!, half[1]!], radius: Math.hypot(...half) };
};

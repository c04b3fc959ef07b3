import type { Vec2 } from '../geometry/index.js';
import { covers } from './visibleSpans.js';

const rimDistance = (rings: readonly (readonly Vec2[])[], x: number, y: number): number => {
  let least = Infinity;
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
      const long = dx * dx + dy * dy;
      const s = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - p[0]) * dx + (y - p[1]) * dy) / long));
      least = Math.min(least, Math.hypot(x - p[0] - s * dx, y - p[1] - s * dy));
    });
  }
  return least;
};

/** Cells along the longer and at least along the shorter side of the first grid, and how often the best cell is looked at more closely. */
const GRID = 20;
const GRID_ACROSS = 7;
const LOOKS = 4;

/** A mm away from the middle of the area's box is worth this many mm of room: enough to settle ties. */
const PULL = 0.02;

/**
 * A place inside the area for a letter: where there are `enough` mm to the rim, or as many as there are, and among those
 * near the middle. Null when the area is empty.
 */
export const roomiestPoint = (
  rings: readonly (readonly Vec2[])[],
  enough: number,
): { readonly at: Vec2; readonly room: number } | null => {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of rings) {
    for (const [x, y] of ring) [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
  }
  let best: { at: Vec2; room: number; worth: number } | null = null;
  const [xm, ym] = [(x0 + x1) / 2, (y0 + y1) / 2];
  let cell = Math.min(Math.max(x1 - x0, y1 - y0) / GRID, Math.max(Math.min(x1 - x0, y1 - y0), 1) / GRID_ACROSS);
  if (!(cell > 0)) return null;
  const look = (xa: number, ya: number, xb: number, yb: number): void => {
    for (let x = xa; x <= xb; x += cell) {
      for (let y = ya; y <= yb; y += cell) {
        if (!covers(rings, x, y)) continue;
        const room = rimDistance(rings, x, y);
        const worth = Math.min(room, enough) - PULL * Math.hypot(x - xm, y - ym);
        if (best === null || worth > best.worth) best = { at: [x, y], room, worth };
      }
    }
  };
  look(x0 + cell / 2, y0 + cell / 2, x1, y1);
  for (let k = 0; k < LOOKS && best !== null; k++) {
    const [x, y]: Vec2 = (best as { at: Vec2 }).at;
    cell /= 3;
    look(x - 3 * cell, y - 3 * cell, x + 3 * cell, y + 3 * cell);
  }
  return best;
};

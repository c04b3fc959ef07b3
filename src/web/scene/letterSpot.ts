import { type Vec2, flatten } from '../../geometry/index.js';
import type { Part } from '../../sheet/index.js';

/** Where the letters of the two sides are written: a plate, the roomiest place on it, and the room there (mm). */
export interface LetterSpot {
  readonly plate: number;
  readonly at: Vec2;
  readonly room: number;
}

/** The plate is looked over on a grid this fine. */
const GRID = 24;
/** A place at the plate's back edge counts as this much roomier. */
const BACKWARDS = 0.6;

const toSegment = (p: Vec2, a: Vec2, b: Vec2): number => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const s = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(p[0] - a[0] - dx * s, p[1] - a[1] - dy * s);
};

const boxOf = (ring: readonly Vec2[]): readonly [number, number, number, number] => {
  const [xs, ys] = [ring.map((p) => p[0]), ring.map((p) => p[1])];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
};

/** The largest plate by its box: what the eye takes for the part's base. */
export const largestPlate = (part: Part): number => {
  const sizes = part.plates.map(({ outline }) => {
    const [x0, y0, x1, y1] = boxOf(outline.map((v): Vec2 => [v.x, v.y]));
    return (x1 - x0) * (y1 - y0);
  });
  return sizes.indexOf(Math.max(...sizes));
};

const letterSpot = (part: Part, plate: number): LetterSpot => {
  const { outline, holes } = part.plates[plate]!;
  const rings = [outline, ...holes].map((contour) => flatten(contour, 0.5));
  const [x0, y0, x1, y1] = boxOf(rings[0]!);
  let most = 0;
  let best: LetterSpot = { plate, at: [(x0 + x1) / 2, (y0 + y1) / 2], room: 0 };
  for (let i = 1; i < GRID; i++) {
    for (let j = 1; j < GRID; j++) {
      const p: Vec2 = [x0 + ((x1 - x0) * i) / GRID, y0 + ((y1 - y0) * j) / GRID];
      let [inside, room] = [false, Infinity];
      for (const ring of rings) {
        ring.forEach((a, k) => {
          const b = ring[(k + 1) % ring.length]!;
          if (a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((b[0] - a[0]) * (p[1] - a[1])) / (b[1] - a[1])) inside = !inside;
          room = Math.min(room, toSegment(p, a, b));
        });
      }
      // rather towards the back: what stands up in front hides the front of a plate from the usual view
      const worth = room * (1 + (BACKWARDS * j) / GRID);
      if (inside && worth > most) {
        most = worth;
        best = { plate, at: p, room };
      }
    }
  }
  return best;
};

/** A spot on each plate of the part. */
export const letterSpots = (part: Part): readonly LetterSpot[] => part.plates.map((_, plate) => letterSpot(part, plate));

import { type Vec2, flatten } from '../geometry/index.js';
import { type Facing, profileOf } from './mirrorProfile.js';
import type { Die, Punch } from './tool.js';

/** mm by which an arc's chords leave it: material is drawn that much too small, so it is asked for on top of the allowance. */
const CHORD_ERROR = 0.001;
/** mm of distance left over the allowance at which the punch counts as arrived. */
const ARRIVED = 1e-4;

/** The least distance from the corners of one outline to the edges of the other, or `least` if none is nearer. */
const cornersTo = (from: readonly Vec2[], to: readonly Vec2[], least: number): number => {
  let square = least * least;
  to.forEach(([ax, ay], i) => {
    const [bx, by] = to[(i + 1) % to.length]!;
    const [ex, ey] = [bx - ax, by - ay];
    const edge = ex * ex + ey * ey;
    const reach = Math.sqrt(square);
    const [x0, x1] = [Math.min(ax, bx) - reach, Math.max(ax, bx) + reach];
    const [y0, y1] = [Math.min(ay, by) - reach, Math.max(ay, by) + reach];
    for (const [px, py] of from) {
      if (px < x0 || px > x1 || py < y0 || py > y1) continue;
      const share = Math.min(1, Math.max(0, ((px - ax) * ex + (py - ay) * ey) / edge));
      const [dx, dy] = [px - ax - ex * share, py - ay - ey * share];
      square = Math.min(square, dx * dx + dy * dy);
    }
  });
  return Math.sqrt(square);
};

/** The distance between two outlines that do not overlap: somewhere a corner of one is nearest to an edge of the other. */
const between = (a: readonly Vec2[], b: readonly Vec2[]): number => {
  const far = Math.hypot(a[0]![0] - b[0]![0], a[0]![1] - b[0]![1]);
  return cornersTo(b, a, cornersTo(a, b, far));
};

/**
 * How far a punch's tip may go below the die's top face with no sheet between, before any part of the punch comes
 * nearer than `allowance` to the die: mm, negative if the tip must stay above it (an anvil: -allowance). This is a
 * station's empty limit. The punch comes down in steps that the distance itself allows, so it passes nothing.
 *
 * `punchPenetration(straight, v12, 1)`: a 85 degree included nose of radius 1 in a V 12 of 85 degrees included, 4.6 mm.
 */
export const punchPenetration = (
  punch: Punch,
  die: Die,
  allowance: number,
  punchFacing: Facing = 'as drawn',
  dieFacing: Facing = 'as drawn',
): number => {
  const body = flatten(profileOf(die, dieFacing), CHORD_ERROR);
  const tool = flatten(profileOf(punch, punchFacing), CHORD_ERROR);
  const needed = allowance + 2 * CHORD_ERROR;
  let depth = -needed - 1;
  while (depth < die.height) {
    const spare = between(tool.map((p): Vec2 => [p[0], p[1] - depth]), body) - needed;
    if (spare < ARRIVED) return depth;
    depth += spare;
  }
  return die.height;
};

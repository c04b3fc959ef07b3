import type { Vec2 } from '../geometry/index.js';

/** mm: places along a line that close are one. */
const SAME = 1e-9;

/** The lowest (`sign` 1) or highest (-1) place at `back` of the lines between the points, times `sign`; Infinity where none reaches there. */
const outermost = (points: readonly Vec2[], closed: boolean, back: number, sign: 1 | -1): number => {
  let least = Infinity;
  for (let i = closed ? 0 : 1; i < points.length; i++) {
    const [p, q] = [points[(i + points.length - 1) % points.length]!, points[i]!];
    const [low, high] = p[0] < q[0] ? [p, q] : [q, p];
    if (back < low[0] - SAME || back > high[0] + SAME) continue;
    const run = high[0] - low[0];
    least = run < SAME
      ? Math.min(least, sign * low[1], sign * high[1])
      : Math.min(least, sign * (low[1] + ((high[1] - low[1]) * (back - low[0])) / run));
  }
  return least;
};

/**
 * up of a tool's origin when its outline (a ring in its own frame) stands on the lines under it: over every back the outline's
 * lowest place is no lower than the highest of the lines. Both are straight between corners, so corners are all that is asked. mm
 */
export const restingTip = (outline: readonly Vec2[], lines: readonly (readonly Vec2[])[]): number => {
  let tip = -Infinity;
  for (const corners of [outline, ...lines]) {
    for (const [back] of corners) {
      const over = outermost(outline, true, back, 1);
      if (over === Infinity) continue;
      for (const line of lines) tip = Math.max(tip, -outermost(line, false, back, -1) - over);
    }
  }
  return tip;
};

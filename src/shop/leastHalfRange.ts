/** A point of a line that is to be made straight: place and height. */
export type LinePoint = readonly [x: number, y: number];

const turns = (a: LinePoint, b: LinePoint, c: LinePoint): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** One side of the convex hull of points in order of x. */
const chain = (points: readonly LinePoint[], sign: 1 | -1): LinePoint[] => {
  const kept: LinePoint[] = [];
  for (const p of points) {
    while (kept.length > 1 && sign * turns(kept[kept.length - 2]!, kept[kept.length - 1]!, p) <= 0) kept.pop();
    kept.push(p);
  }
  return kept;
};

/** Half of what the heights span once a line of this slope is taken off. */
export const halfRange = (points: readonly LinePoint[], slope: number): number => {
  let [low, high] = [Infinity, -Infinity];
  for (const [x, y] of points) {
    const left = y - slope * x;
    if (left < low) low = left;
    if (left > high) high = left;
  }
  return (high - low) / 2;
};

/**
 * The slope whose line comes nearest to all the points, by the largest distance (minimax, not least squares: a promise is a plus or
 * minus, and that is what this makes smallest). The span over the slope is convex and bends only at slopes of the hull's edges, so
 * one of these is the least. Points in order of x.
 *
 * `leastSlope([[0, 0], [1, 0], [2, 1]])` // 0.5: its line leaves 0.25 to both sides
 */
export const leastSlope = (points: readonly LinePoint[]): number => {
  let best = { slope: 0, half: halfRange(points, 0) };
  for (const side of [chain(points, 1), chain(points, -1)]) {
    for (let i = 1; i < side.length; i++) {
      const [p, q] = [side[i - 1]!, side[i]!];
      if (q[0] === p[0]) continue;
      const slope = (q[1] - p[1]) / (q[0] - p[0]);
      const half = halfRange(points, slope);
      if (half < best.half) best = { slope, half };
    }
  }
  return best.slope;
};

import { expect, it } from 'vitest';
import type { Vec3 } from '../../geometry/index.js';
import { onCurve, spline } from './curve.js';

it('runs a quarter circle as a rational spline', () => {
  // the textbook quarter circle: weights 1, cos 45, 1 on the corners of a square
  const quarter = spline(2, [[1, 0, 0], [1, 1, 0], [0, 1, 0]], [1, Math.SQRT1_2, 1], [0, 1], [3, 3], false);
  for (const u of [0, 0.2, 0.5, 0.9, 1]) {
    const [x, y] = onCurve(quarter, u);
    expect(Math.hypot(x, y)).toBeCloseTo(1, 12);
  }
  expect(onCurve(quarter, 1)[1]).toBeCloseTo(1, 12);
});

it('closes a periodic spline', () => {
  // uniform cubic: at a knot the point is (before + 4 own + after) / 6
  const poles: Vec3[] = [[0, 0, 0], [6, 0, 0], [6, 6, 0], [0, 6, 0]];
  const ring = spline(3, poles, [1, 1, 1, 1], [0, 1, 2, 3, 4], [1, 1, 1, 1, 1], true);
  const at = [0, 1, 2, 3, 4].map((u) => onCurve(ring, u));
  expect(at[0]!).toEqual(at[4]!);
  // the first span has poles 0 to 3, so knot 0 lies by pole 1
  expect(at[0]![0]).toBeCloseTo((0 + 4 * 6 + 6) / 6, 12);
  expect(at[0]![1]).toBeCloseTo((0 + 0 + 6) / 6, 12);
});

import type { Vec2 } from '../../geometry/index.js';

export interface BSpline {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly Vec2[];
  /** One for each point; absent for a spline without weights. */
  readonly weights?: readonly number[];
}

/** The point at parameter t by de Boor's recursion, in homogeneous coordinates where there are weights. */
const at = ({ degree, knots, points, weights }: BSpline, t: number): Vec2 => {
  let span = degree;
  while (span < points.length - 1 && t >= knots[span + 1]!) span += 1;
  const d = Array.from({ length: degree + 1 }, (_, j) => {
    const k = j + span - degree;
    const w = weights?.[k] ?? 1;
    return [points[k]![0] * w, points[k]![1] * w, w] as [number, number, number];
  });
  for (let r = 1; r <= degree; r++) {
    for (let j = degree; j >= r; j--) {
      const low = knots[j + span - degree]!;
      const width = knots[j + 1 + span - r]! - low;
      const s = width === 0 ? 0 : (t - low) / width;
      d[j] = [0, 1, 2].map((i) => d[j - 1]![i]! * (1 - s) + d[j]![i]! * s) as [number, number, number];
    }
  }
  const [x, y, w] = d[degree]!;
  return [x / w, y / w];
};

/** A span is halved at most so often: 4096 chords follow any curve that a laser can. */
const MOST_HALVINGS = 12;
/** Chords of a whole spline, however wild its points: a damaged one must not take minutes. */
const MOST_CHORDS = 20_000;

/** The spline as points, each span cut until its chords leave the curve by no more than `chordError`; ends included. */
export const splinePoints = (spline: BSpline, chordError: number): Vec2[] => {
  const { degree, knots, points } = spline;
  const stops = [...new Set(knots.slice(degree, points.length + 1))];
  const found: Vec2[] = [at(spline, stops[0]!)];
  const deepest = Math.max(1, Math.min(MOST_HALVINGS, Math.floor(Math.log2(MOST_CHORDS / stops.length))));
  const cut = (t0: number, p: Vec2, t1: number, q: Vec2, depth: number): void => {
    // three places, so that a curve that crosses its chord in the middle is seen
    const off = [0.25, 0.5, 0.75].map((share) => {
      const m = at(spline, t0 + (t1 - t0) * share);
      const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
      const length = Math.hypot(dx, dy);
      return length === 0 ? Math.hypot(m[0] - p[0], m[1] - p[1]) : Math.abs(dx * (m[1] - p[1]) - dy * (m[0] - p[0])) / length;
    });
    if (depth >= deepest || Math.max(...off) <= chordError) {
      found.push(q);
      return;
    }
    const middle = (t0 + t1) / 2;
    const m = at(spline, middle);
    cut(t0, p, middle, m, depth + 1);
    cut(middle, m, t1, q, depth + 1);
  };
  for (let i = 0; i + 1 < stops.length; i++) cut(stops[i]!, at(spline, stops[i]!), stops[i + 1]!, at(spline, stops[i + 1]!), 0);
  return found;
};

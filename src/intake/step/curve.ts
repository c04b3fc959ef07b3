import { type Vec3, add3, cross3, scale3, sub3, unit3 } from '../../geometry/index.js';

/** A curve as the kernel writes it, with its own parameter. */
export type Curve =
  | { readonly kind: 'line'; readonly origin: Vec3; readonly along: Vec3 }
  | { readonly kind: 'circle' | 'ellipse' | 'parabola' | 'hyperbola'; readonly origin: Vec3; readonly x: Vec3; readonly y: Vec3; readonly sizes: readonly [number, number] }
  | Spline
  | { readonly kind: 'offset'; readonly by: number; readonly across: Vec3; readonly of: Curve };

export interface Spline {
  readonly kind: 'spline';
  readonly degree: number;
  readonly poles: readonly Vec3[];
  /** One for each pole; all 1 where the curve is not rational. */
  readonly weights: readonly number[];
  /** Each knot as often as it counts; of a periodic spline, one period's knots more before and after. */
  readonly knots: readonly number[];
  /** Index of the pole that the span beginning at knots[degree] starts from; poles are counted round where periodic. */
  readonly firstPole: number;
  readonly first: number;
  readonly last: number;
}

const inFrame = (origin: Vec3, x: Vec3, a: number, y: Vec3, b: number): Vec3 => [
  origin[0] + a * x[0] + b * y[0],
  origin[1] + a * x[1] + b * y[1],
  origin[2] + a * x[2] + b * y[2],
];

/** A spline from its knots and how often each counts. */
export const spline = (degree: number, poles: readonly Vec3[], weights: readonly number[], values: readonly number[], counts: readonly number[], periodic: boolean): Spline => {
  const flat = values.flatMap((v, i) => Array.from({ length: counts[i]! }, () => v));
  const [first, last] = [values[0]!, values[values.length - 1]!];
  if (!periodic) {
    return { kind: 'spline', degree, poles, weights, knots: flat, firstPole: 0, first: flat[degree]!, last: flat[flat.length - 1 - degree]! };
  }
  // one period holds as many knots as there are poles (the last knot is the first again); degree + 1 more each side
  const own = flat.slice(0, poles.length);
  const round = (i: number): number => own[((i % own.length) + own.length) % own.length]! + Math.floor(i / own.length) * (last - first);
  const from = counts[0]! - 1 - degree;
  const knots = Array.from({ length: own.length + 2 * degree + 2 }, (_, i) => round(from + i));
  return { kind: 'spline', degree, poles, weights, knots, firstPole: 0, first, last };
};

/** De Boor's scheme, in homogeneous coordinates. */
const onSpline = ({ degree: p, poles, weights, knots, firstPole, first, last }: Spline, parameter: number): Vec3 => {
  const u = Math.min(last, Math.max(first, parameter));
  let [low, high] = [p, knots.length - p - 2];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (knots[middle]! <= u) low = middle;
    else high = middle - 1;
  }
  // four numbers for each pole, in one row: a drawing of many splines spends most of its reading here
  const d: number[] = [];
  for (let i = 0; i <= p; i++) {
    const at = (firstPole + low - p + i) % poles.length;
    const pole = poles[at]!;
    const w = weights[at]!;
    d.push(pole[0] * w, pole[1] * w, pole[2] * w, w);
  }
  for (let r = 1; r <= p; r++) {
    for (let i = p; i >= r; i--) {
      const left = knots[low - p + i]!;
      const span = knots[low + 1 + i - r]! - left;
      const s = span === 0 ? 0 : (u - left) / span;
      for (let k = 4 * i; k < 4 * i + 4; k++) d[k] = d[k - 4]! + s * (d[k]! - d[k - 4]!);
    }
  }
  const w = d[4 * p + 3]!;
  return [d[4 * p]! / w, d[4 * p + 1]! / w, d[4 * p + 2]! / w];
};

/** The point of a curve at a parameter. */
export const onCurve = (curve: Curve, u: number): Vec3 => {
  switch (curve.kind) {
    case 'line':
      return inFrame(curve.origin, curve.along, u, curve.along, 0);
    case 'circle':
    case 'ellipse':
      return inFrame(curve.origin, curve.x, curve.sizes[0] * Math.cos(u), curve.y, curve.sizes[1] * Math.sin(u));
    case 'parabola':
      return inFrame(curve.origin, curve.x, (u * u) / (4 * curve.sizes[0]), curve.y, u);
    case 'hyperbola':
      return inFrame(curve.origin, curve.x, curve.sizes[0] * Math.cosh(u), curve.y, curve.sizes[1] * Math.sinh(u));
    case 'spline':
      return onSpline(curve, u);
    case 'offset': {
      // the tangent over a ten-thousandth of the parameter's own size: offset curves only bound faces here
      const step = 1e-4 * Math.max(1, Math.abs(u));
      const tangent = sub3(onCurve(curve.of, u + step), onCurve(curve.of, u - step));
      return add3(onCurve(curve.of, u), scale3(unit3(cross3(tangent, curve.across)), curve.by));
    }
  }
};

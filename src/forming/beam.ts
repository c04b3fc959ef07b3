/** A beam of constant section on two supports. Lengths in mm, E and nu of its material. */
export interface Beam {
  /** Distance between the supports (cylinders or side frames). */
  readonly span: number;
  /** Second moment of area, mm4, and area, mm2. */
  readonly inertia: number;
  readonly area: number;
  readonly modulus: number;
  readonly poisson: number;
  /** Shear coefficient: 5/6 for a rectangle. */
  readonly shearCoefficient: number;
}

/** A plate on edge as a beam; steel when nothing is said. */
export const plateBeam = (width: number, height: number, span: number, modulus = 210000, poisson = 0.3): Beam => ({
  span, inertia: (width * height ** 3) / 12, area: width * height, modulus, poisson, shearCoefficient: 5 / 6,
});

/** A force spread evenly from `from` to `to`, mm from the middle of the span. N. */
export interface SpreadLoad {
  readonly force: number;
  readonly from: number;
  readonly to: number;
}

/** mm towards the load. */
export interface Deflection {
  readonly bending: number;
  readonly shear: number;
  readonly total: number;
}

/**
 * Deflection of a Timoshenko beam at `at` (mm from the middle of its span) against the line through its supports:
 * statics, shear included. Place and load may lie beyond the supports.
 *
 * @example beamDeflection(plateBeam(60, 800, 3000), { force: 1e6, from: -1500, to: 1500 }, 0).total // 0.77002
 */
export const beamDeflection = (beam: Beam, load: SpreadLoad, at: number): Deflection => {
  const half = beam.span / 2;
  const [x, a, b] = [at + half, load.from + half, load.to + half];
  const bending = load.force * averaged((p) => pointBending(beam, x, p), a, b, [0, x, beam.span]);
  const shear = load.force * averaged((p) => pointShear(beam, x, p), a, b, [0, x, beam.span]);
  return { bending, shear, total: bending + shear };
};

/** Deflection at x under a unit force at p, both from the left support. */
const pointBending = (beam: Beam, x: number, p: number): number => {
  const l = beam.span;
  const rigidity = beam.modulus * beam.inertia;
  // beyond the left support all is the mirror image
  if (p < 0 || (x < 0 && p <= l)) return pointBending(beam, l - x, l - p);
  if (p <= l) {
    if (x <= l) {
      const [near, far] = x <= p ? [x, l - p] : [l - x, p];
      return (near * far * (l * l - near * near - far * far)) / (6 * l * rigidity);
    }
    return (-p * (l - p) * (l + p) * (x - l)) / (6 * l * rigidity);
  }
  const c = p - l;
  if (x <= l) return (-c * x * (l * l - x * x)) / (6 * l * rigidity);
  const d = x - l;
  const cantilever = d <= c ? (d * d * (3 * c - d)) / 6 : (c * c * (3 * d - c)) / 6;
  return ((c * l * d) / 3 + cantilever) / rigidity;
};

/** Moment at x under a unit force at p, sagging positive. */
const pointMoment = (l: number, x: number, p: number): number =>
  (1 - p / l) * Math.max(0, x) - Math.max(0, x - p) + (p / l) * Math.max(0, x - l);

const pointShear = (beam: Beam, x: number, p: number): number => {
  const l = beam.span;
  if (p < 0 || (x < 0 && p <= l)) return pointShear(beam, l - x, l - p);
  const g = beam.modulus / (2 * (1 + beam.poisson));
  // the shear part follows the moment; the line through both supports is taken off
  const line = (pointMoment(l, l, p) * x) / l;
  return (pointMoment(l, x, p) - line) / (beam.shearCoefficient * g * beam.area);
};

/** Mean over [a, b] of a function that is a cubic between the knees: three-point Gauss in each piece is exact. */
const averaged = (f: (p: number) => number, a: number, b: number, knees: readonly number[]): number => {
  if (b <= a) return f(a);
  const ends = [a, ...knees.filter((k) => k > a && k < b).sort((p, q) => p - q), b];
  let sum = 0;
  for (let i = 0; i + 1 < ends.length; i++) {
    const middle = (ends[i]! + ends[i + 1]!) / 2;
    const reach = (ends[i + 1]! - ends[i]!) / 2;
    const node = Math.sqrt(0.6) * reach;
    sum += ((5 * f(middle - node) + 8 * f(middle) + 5 * f(middle + node)) / 9) * reach;
  }
  return sum / (b - a);
};

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

/** A plate on edge as a beam. */
export const plateBeam = (width: number, height: number, span: number, modulus = 210000, poisson = 0.3): Beam => ({
  span, inertia: (width * height ** 3) / 12, area: width * height, modulus, poisson, shearCoefficient: 5 / 6,
});

/** A force spread evenly from `from` to `to`, mm from the middle of the span. N. */
export interface SpreadLoad {
  readonly force: number;
  readonly from: number;
  readonly to: number;
}

export interface Deflection {
  readonly bending: number;
  readonly shear: number;
  readonly total: number;
}

/**
 * Deflection of a Timoshenko beam at `at` (mm from the middle of its span), mm towards the load; statics and unit
 * load, shear included. Loads must lie within the span.
 *
 * @example beamDeflection(plateBeam(60, 800, 3000), { force: 1e6, from: -1500, to: 1500 }, 0).total // 0.77002
 */
export const beamDeflection = (beam: Beam, load: SpreadLoad, at: number): Deflection => {
  const half = beam.span / 2;
  const x = at + half;
  const a = load.from + half;
  const b = load.to + half;
  const bending = averaged((p) => pointBending(beam, x, p), a, b, x) * load.force;
  const shear = averaged((p) => pointShear(beam, x, p), a, b, x) * load.force;
  return { bending, shear, total: bending + shear };
};

/** Deflection at x under a unit force at p, from the left support. */
const pointBending = (beam: Beam, x: number, p: number): number => {
  const l = beam.span;
  const [near, far] = x <= p ? [x, l - p] : [l - x, p];
  return (near * far * (l * l - near * near - far * far)) / (6 * l * beam.modulus * beam.inertia);
};

const pointShear = (beam: Beam, x: number, p: number): number => {
  const l = beam.span;
  const g = beam.modulus / (2 * (1 + beam.poisson));
  const [near, far] = x <= p ? [x, l - p] : [l - x, p];
  return (near * far) / l / (beam.shearCoefficient * g * beam.area);
};

/** Mean over [a, b] of a function that is a cubic on both sides of `knee`: three-point Gauss on each side is exact. */
const averaged = (f: (p: number) => number, a: number, b: number, knee: number): number => {
  if (b <= a) return f(a);
  const pieces = knee > a && knee < b ? [[a, knee], [knee, b]] : [[a, b]];
  let sum = 0;
  for (const [from, to] of pieces as [number, number][]) {
    const middle = (from + to) / 2;
    const reach = (to - from) / 2;
    const node = Math.sqrt(0.6) * reach;
    sum += ((5 * f(middle - node) + 8 * f(middle) + 5 * f(middle + node)) / 9) * reach;
  }
  return sum / (b - a);
};

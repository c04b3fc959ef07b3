import { flowStress, type HardeningCurve, initialYield } from '../../metal/index.js';

/**
 * One fibre of a wide strip: stress along the strip against plastic strain, no strain across the width, no stress
 * through the thickness, von Mises with isotropic hardening. Everything over Young's modulus, so it has no unit.
 */
export interface Fibre {
  /** E / (1 - nu^2), over E. */
  readonly stiffness: number;
  /** Stress at which it yields. */
  readonly yield: number;
  /** Stress against plastic strain of the fibre, both ascending from plastic strain 0; straight between. */
  readonly plastic: Float64Array;
  readonly stress: Float64Array;
}

/** Log strain to which fibres are followed; a bend to a sharp corner stays below it. */
const LAST_STRAIN = 3;
/** Cells of the table, spaced as a geometric series. */
const CELLS = 200;
/** The first cell's size over the yield strain. */
const FIRST_CELL = 0.02;

/** True stress over E against equivalent plastic strain, never falling. */
const hardening = (curve: HardeningCurve, modulus: number): ((p: number) => number) => {
  if (curve.kind === 'hollomon') {
    // Hollomon's law counts the total strain, of which the elastic part at yield is taken along as constant
    const start = initialYield(curve, modulus) / modulus;
    return (p) => (curve.k / modulus) * (start + p) ** curve.n;
  }
  if (curve.kind === 'swift') return (p) => flowStress(curve, p) / modulus;
  const last = curve.points[curve.points.length - 1]!;
  // past the last point a falling line would end in negative stress: it is held instead
  return (p) => Math.max(flowStress(curve, p), p > last[0] ? last[1] : 0) / modulus;
};

/**
 * The fibre of a metal. The width's stress follows its own path from nu times the fibre's to half of it (return to
 * the yield surface, backward Euler), so yielding begins at 1.125 and goes on at 1.155 times the tensile flow stress
 * for nu = 0.3.
 */
export const fibreOf = (curve: HardeningCurve, modulus: number, poisson: number): Fibre => {
  const sigma = hardening(curve, modulus);
  const stiffness = 1 / (1 - poisson * poisson);
  const yieldStress = sigma(0) / Math.sqrt(1 - poisson + poisson * poisson);
  const yieldStrain = yieldStress / stiffness;
  const first = FIRST_CELL * yieldStrain;
  const ratio = (LAST_STRAIN / first) ** (1 / CELLS);
  const plastic = new Float64Array(CELLS + 1);
  const stress = new Float64Array(CELLS + 1);
  stress[0] = yieldStress;
  // sum and difference of the two stresses: the yield surface is (sum^2 + 3 difference^2)/4 = sigma^2
  let sum = yieldStress * (1 + poisson);
  let difference = yieldStress * (1 - poisson);
  let equivalent = 0;
  let strain = yieldStrain;
  let size = first;
  for (let i = 1; i <= CELLS; i++) {
    const step = size * (ratio - 1);
    size *= ratio;
    const trialSum = sum + step / (1 - poisson);
    const trialDifference = difference + step / (1 + poisson);
    const mises = (flow: number): number => {
      sum = trialSum / (1 + flow / (1 - poisson));
      difference = trialDifference / (1 + (3 * flow) / (1 + poisson));
      return Math.sqrt((sum * sum + 3 * difference * difference) / 4);
    };
    const excess = (flow: number): number => {
      const q = mises(flow);
      return q - sigma(equivalent + 2 * q * flow);
    };
    let low = 0;
    let high = 1;
    while (excess(high) > 0) high *= 4;
    for (let k = 0; k < 60; k++) {
      const middle = (low + high) / 2;
      if (excess(middle) > 0) low = middle;
      else high = middle;
    }
    equivalent += 2 * mises(high) * high;
    strain += step;
    stress[i] = (sum + difference) / 2;
    plastic[i] = strain - stress[i]! / stiffness;
  }
  return { stiffness, yield: yieldStress, plastic, stress };
};

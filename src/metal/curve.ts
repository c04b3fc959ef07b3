import type { HardeningCurve } from './metal.js';

/** The strain at which a tensile test's 0.2 % proof stress is read. */
const PROOF_STRAIN = 0.002;

/** True stress in MPa at an equivalent plastic strain >= 0. Points are joined by lines and extended by the last one. */
export const flowStress = (curve: HardeningCurve, plasticStrain: number): number => {
  switch (curve.kind) {
    case 'swift':
      return curve.k * (curve.e0 + plasticStrain) ** curve.n;
    case 'hollomon':
      return curve.k * plasticStrain ** curve.n;
    case 'points':
      return interpolate(curve.points, plasticStrain);
  }
};

const interpolate = (points: readonly (readonly [number, number])[], x: number): number => {
  let i = 1;
  while (i < points.length - 1 && points[i]![0] < x) i++;
  const [x0, y0] = points[i - 1]!;
  const [x1, y1] = points[i]!;
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
};

/**
 * Stress at which yielding begins, MPa. Hollomon's law has none of its own (it starts at zero): there it is where the
 * law meets the elastic line, sigma = E (sigma/K)^(1/n).
 */
export const initialYield = (curve: HardeningCurve, modulus: number): number =>
  curve.kind === 'hollomon' ? (curve.k / modulus ** curve.n) ** (1 / (1 - curve.n)) : flowStress(curve, 0);

/**
 * Tensile strength (engineering) and the uniform plastic strain that a curve implies, from Considere's condition
 * d sigma / d e = sigma; for Swift Rm = K n^n e^-(n - e0).
 *
 * @example tensileOf({ kind: 'hollomon', k: 530, n: 0.26 }).strength // 287.9 MPa
 */
export const tensileOf = (curve: HardeningCurve): { readonly strength: number; readonly uniformStrain: number } => {
  if (curve.kind === 'points') return tensileOfPoints(curve.points);
  const e0 = curve.kind === 'swift' ? curve.e0 : 0;
  const uniformStrain = Math.max(0, curve.n - e0);
  return { strength: flowStress(curve, uniformStrain) * Math.exp(-uniformStrain), uniformStrain };
};

const tensileOfPoints = (
  points: readonly (readonly [number, number])[],
): { readonly strength: number; readonly uniformStrain: number } => {
  // the greatest engineering stress s e^-e lies within a segment where s' = s, or at a corner
  let best = { strength: 0, uniformStrain: 0 };
  const look = (e: number): void => {
    const strength = interpolate(points, e) * Math.exp(-e);
    if (strength > best.strength) best = { strength, uniformStrain: e };
  };
  for (let i = 0; i + 1 < points.length; i++) {
    const [x0, y0] = points[i]!;
    const [x1, y1] = points[i + 1]!;
    look(x0);
    look(x1);
    const slope = (y1 - y0) / (x1 - x0);
    if (slope > 0) {
      const e = x0 + (slope - y0) / slope;
      if (e > x0 && e < x1) look(e);
    }
  }
  return best;
};

/** 0.2 % proof stress of a curve, MPa (elastic strain neglected, plastic strain 0.002). */
export const proofStress = (curve: HardeningCurve): number => flowStress(curve, PROOF_STRAIN);

/**
 * Swift's law through a tensile test's proof stress and strength (MPa) with the uniform plastic strain (logarithmic;
 * from Ag: ln(1 + Ag) - Rm/E). Three conditions: sigma(0.002) = yield; Rm; Considere at the uniform strain, so n =
 * e0 + uniformStrain. Returns null when no such law exists (yield above the strength, or not below the flow stress
 * at the uniform strain).
 */
export const swiftFromTensile = (
  yieldStress: number,
  strength: number,
  uniformStrain: number,
): Extract<HardeningCurve, { kind: 'swift' }> | null => {
  if (!(yieldStress > 0 && strength > yieldStress && uniformStrain > 2 * PROOF_STRAIN)) return null;
  const k = (e0: number): number => (strength * Math.exp(uniformStrain)) / (e0 + uniformStrain) ** (e0 + uniformStrain);
  const proof = (e0: number): number => k(e0) * (e0 + PROOF_STRAIN) ** (e0 + uniformStrain);
  // proof(e0) grows with e0: bisect in the logarithm
  let low = 1e-9;
  let high = 2;
  if (proof(low) > yieldStress || proof(high) < yieldStress) return null;
  for (let i = 0; i < 80; i++) {
    const middle = Math.sqrt(low * high);
    if (proof(middle) < yieldStress) low = middle;
    else high = middle;
  }
  const e0 = Math.sqrt(low * high);
  return { kind: 'swift', k: k(e0), n: e0 + uniformStrain, e0 };
};

/** The same curve with every stress times a factor: stronger or softer stock of the same kind. */
export const scaleCurve = (curve: HardeningCurve, factor: number): HardeningCurve => {
  switch (curve.kind) {
    case 'swift':
      return { ...curve, k: curve.k * factor };
    case 'hollomon':
      return { ...curve, k: curve.k * factor };
    case 'points':
      return { ...curve, points: curve.points.map(([e, s]) => [e, s * factor] as const) };
  }
};

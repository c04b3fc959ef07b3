import { DEGREE } from './degrees.js';

/** Gardiner 1957: loaded over released radius of a bent beam, 4x^3 - 3x + 1, x = Ri Y / (E t). Uniaxial. */
export const gardinerRatio = (insideRadius: number, yieldStress: number, modulus: number, thickness: number): number => {
  const x = (insideRadius * yieldStress) / (modulus * thickness);
  return 4 * x ** 3 - 3 * x + 1;
};

/** Kalpakjian: Ks = released over loaded bend angle of the arc, from the radii before and after. */
export const springbackFactor = (loadedRadius: number, releasedRadius: number, thickness: number): number =>
  ((2 * loadedRadius) / thickness + 1) / ((2 * releasedRadius) / thickness + 1);

/** The German table book's released inside radius: r1 = kR (r2 + s/2) - s/2, r1 on the tool. */
export const toolRadiusByFactor = (factor: number, partRadius: number, thickness: number): number =>
  factor * (partRadius + thickness / 2) - thickness / 2;

/**
 * Springback of the whole bend when a leg is let go, degrees: the leg as a cantilever of length `arm` under the
 * shoulder's force `normal` (N/mm), both legs, E over 1 - nu^2.
 */
export const legRelease = (normal: number, arm: number, thickness: number, modulus: number, poisson: number): number =>
  (12 * (1 - poisson * poisson) * normal * arm * arm) / (modulus * thickness ** 3) / DEGREE;

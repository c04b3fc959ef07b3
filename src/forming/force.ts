import { DEGREE } from './degrees.js';
import { type Vee, halfOpening } from './vee.js';

/** Textbook peak force per length, K Rm t^2 / V, N/mm. K 1.33 for a V die (Groover; 1.2 to 1.33 Kalpakjian). */
export const textbookForce = (tensile: number, thickness: number, v: number, factor = 1.33): number =>
  (factor * tensile * thickness * thickness) / v;

/**
 * Oehler's form as quoted from Lange, Umformtechnik - Blechbearbeitung, 2nd ed. 1990: (1 + 4 t/V) Rm t^2 / V, N/mm;
 * for 0.5 <= t <= 10, 5 <= V/t <= 20, V/tip >= 5.
 */
export const oehlerForce = (tensile: number, thickness: number, v: number): number =>
  ((1 + (4 * thickness) / v) * tensile * thickness * thickness) / v;

/**
 * Bending force with linear hardening, Asadzadeh, Gaenser and Muecke, Applications in Engineering Science 6 (2021)
 * 100049, N/mm. `h` the hardening modulus MPa.
 */
export const linearHardeningForce = (
  modulus: number, h: number, yieldStress: number, thickness: number, width: number, radius: number,
): number =>
  (modulus / (modulus + h)) *
  ((yieldStress * thickness ** 2) / width +
    (h * thickness ** 3) / (3 * radius * width) -
    (4 * yieldStress ** 3 * radius ** 2) / (3 * width * modulus ** 2)) *
  (1 + (4 * thickness) / width);

/** Lever arm of the shoulder's force about the middle of the strip, along the leg, mm. */
export const leverArm = (vee: Vee, thickness: number, insideRadius: number, bendAngle: number): number => {
  const b = (bendAngle / 2) * DEGREE;
  return (
    halfOpening(vee) / Math.cos(b) -
    (insideRadius + thickness + vee.shoulderRadius) * Math.tan(b) +
    (insideRadius + thickness / 2) * Math.sin(b)
  );
};

/**
 * Punch force per length that a moment (N mm/mm) in the middle asks at a bend angle, N/mm: statics of the leg,
 * F = 2 N (cos b + mu sin b), M = N l. The friction's own moment about the middle is left out.
 */
export const forceFromMoment = (
  moment: number, vee: Vee, thickness: number, insideRadius: number, bendAngle: number, friction: number,
): number => {
  const b = (bendAngle / 2) * DEGREE;
  const normal = moment / leverArm(vee, thickness, insideRadius, bendAngle);
  return 2 * normal * (Math.cos(b) + friction * Math.sin(b));
};

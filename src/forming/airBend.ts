import { flowStress, type Metal, proofStress, tensileOf } from '../metal/index.js';
import { allowanceByRule, deductionFrom, type OutsideConvention, outsideConvention } from './allowance.js';
import { DEGREE } from './degrees.js';
import { forceFromMoment, leverArm } from './force.js';
import { legRelease } from './springback.js';
import { closedFormDepth, halfOpening, legReserve, type VConvention } from './vee.js';

/** One air bend asked for. Lengths in mm, angles in degrees. */
export interface AirBendInput {
  readonly metal: Metal;
  readonly thickness: number;
  readonly v: number;
  readonly vConvention: VConvention;
  /** Included angle of the V. */
  readonly dieAngle: number;
  readonly shoulderRadius: number;
  readonly tipRadius: number;
  /** Coulomb friction at the shoulders; 0.1 when absent. */
  readonly friction?: number;
  /** The bend angle wanted, released. */
  readonly bendAngle: number;
}

/** One air bend answered. mm, N/mm, degrees. */
export interface AirBend {
  /** Punch travel from first touch. */
  readonly depth: number;
  readonly bendAngleUnderLoad: number;
  readonly includedAngleUnderLoad: number;
  readonly bendAngleReleased: number;
  readonly includedAngleReleased: number;
  readonly springback: number;
  /**
   * Released, of the arc that touches both wings' inner faces and the true inner apex: with `allowance` it gives the
   * outside dimensions and the place of the apex. The metal's own least radius is smaller.
   */
  readonly insideRadius: number;
  /** Greatest over the stroke, and at its end. */
  readonly peakForcePerLength: number;
  readonly forcePerLength: number;
  /** Flat length of that arc, and outside lengths less flat length in `deductionConvention`. */
  readonly allowance: number;
  readonly deduction: number;
  readonly deductionConvention: OutsideConvention;
  /** Shortest flange that this V bends, outside, in `deductionConvention`. */
  readonly minFlange: number;
  readonly vSharp: number;
  readonly vTangent: number;
  readonly warnings: readonly string[];
  readonly method: 'strip' | 'closed form';
}

/** Why there is no air bend. */
export interface AirBendReason {
  readonly code: 'input' | 'bottoming' | 'radius' | 'shoulder' | 'no equilibrium';
  readonly sentence: string;
  /** mm or degrees, as the sentence says. */
  readonly by?: number;
}

export type AirBendResult =
  | { readonly ok: true; readonly value: AirBend }
  | { readonly ok: false; readonly reason: AirBendReason };

export const airBend = (input: AirBendInput): AirBendResult => {
  const { metal, thickness: t, tipRadius, bendAngle } = input;
  const friction = input.friction ?? 0.1;
  const tangent = 2 * halfOpening(input);
  const insideRadius = Math.max(1.2 * tipRadius, 0.135 * tangent);
  const plane = 2 / Math.sqrt(3);
  const strain = plane * Math.log(1 + t / 2 / (insideRadius + t / 2));
  const moment = (plane * flowStress(metal.curve, strain / 2) * t * t) / 4;
  let springback = 1;
  for (let i = 0; i < 4; i++) {
    const loaded = bendAngle + springback;
    const arm = leverArm(input, t, insideRadius, loaded);
    springback = legRelease(moment / arm, arm, t, metal.modulus, metal.poisson);
  }
  const loaded = bendAngle + springback;
  if (180 - loaded < input.dieAngle) {
    return {
      ok: false,
      reason: {
        code: 'bottoming',
        sentence: `A bend of ${bendAngle} degrees needs an included angle of ${(180 - loaded).toFixed(1)} degrees under load, past the die's own ${input.dieAngle} degrees: that is bottoming.`,
        by: input.dieAngle - (180 - loaded),
      },
    };
  }
  if (legReserve(input, t, insideRadius, loaded) < 0) {
    return { ok: false, reason: { code: 'shoulder', sentence: `The shoulders of V ${input.v} would touch the arc itself: the V is too narrow for ${t} mm.` } };
  }
  const force = forceFromMoment(moment, input, t, insideRadius, loaded, friction);
  const peak = forceFromMoment(moment, input, t, insideRadius, Math.min(loaded, 45), friction);
  const allowance = allowanceByRule({ name: 'DIN 6935' }, insideRadius, t, bendAngle);
  const deduction = deductionFrom(allowance, insideRadius, t, bendAngle);
  const b = (loaded / 2) * DEGREE;
  const end = tangent / 2 / Math.cos(b) - input.shoulderRadius * Math.tan(b);
  return {
    ok: true,
    value: {
      depth: closedFormDepth(input, t, insideRadius, loaded),
      bendAngleUnderLoad: loaded,
      includedAngleUnderLoad: 180 - loaded,
      bendAngleReleased: bendAngle,
      includedAngleReleased: 180 - bendAngle,
      springback,
      insideRadius,
      peakForcePerLength: Math.max(peak, force),
      forcePerLength: force,
      allowance,
      deduction,
      deductionConvention: outsideConvention(bendAngle),
      minFlange: Math.max(tangent / 2 + deduction / 2, end) + 0.07 * tangent,
      vTangent: tangent,
      vSharp: tangent - 2 * input.shoulderRadius * Math.tan((45 - input.dieAngle / 4) * DEGREE),
      warnings: tensileOf(metal.curve).strength < proofStress(metal.curve) ? ['the hardening curve has no uniform strain'] : [],
      method: 'closed form',
    },
  };
};

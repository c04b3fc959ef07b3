import type { Metal } from '../metal/index.js';
import type { OutsideConvention } from './allowance.js';
import type { VConvention } from './vee.js';

/** Sheet and tools of an air bend. Lengths in mm, angles in degrees. */
export interface AirBendSetup {
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
}

/** One air bend asked for by the bend angle wanted after release, degrees. */
export interface AirBendInput extends AirBendSetup {
  readonly bendAngle: number;
}

/** One air bend asked for by the punch's travel from first touch, mm. */
export interface AirBendDepthInput extends AirBendSetup {
  readonly depth: number;
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
   * outside dimensions and the place of the apex. The metal's own least radius, `leastRadius`, is smaller.
   */
  readonly insideRadius: number;
  /** Inside radius where the strip is bent most, under load. */
  readonly leastRadius: number;
  /** Greatest over the stroke, and at its end. */
  readonly peakForcePerLength: number;
  readonly forcePerLength: number;
  /** Flat length of the arc of `insideRadius`. */
  readonly allowance: number;
  /** Both outside lengths less the flat length, in `deductionConvention`. */
  readonly deduction: number;
  readonly deductionConvention: OutsideConvention;
  /** Neutral line of that arc from the inside face over the thickness. */
  readonly kFactor: number;
  /** Shortest flange that this V bends, outside, in `deductionConvention`: start and end of the stroke, with margin. */
  readonly minFlange: number;
  /** The V opening in both conventions. */
  readonly vSharp: number;
  readonly vTangent: number;
  readonly warnings: readonly string[];
  readonly method: 'strip' | 'closed form';
}

/** Why there is no air bend. */
export interface AirBendReason {
  /**
   * 'input' a figure that cannot be; 'bottoming' past the die's own angle; 'radius' the punch's tip is too big for
   * the V; 'shoulder' the V is too narrow for the sheet; 'no equilibrium' none was found.
   */
  readonly code: 'input' | 'bottoming' | 'radius' | 'shoulder' | 'no equilibrium';
  readonly sentence: string;
  /** mm or degrees, as the sentence says. */
  readonly by?: number;
}

export type AirBendResult =
  | { readonly ok: true; readonly value: AirBend }
  | { readonly ok: false; readonly reason: AirBendReason };

import { type Metal, metalOfStrength, type ThicknessTolerance } from '../metal/index.js';
import { airBend, airBendAtDepth } from './airBend.js';
import type { AirBend, AirBendInput, AirBendReason } from './airBendTypes.js';

/** Least and greatest. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/** What the stock's scatter does to a bend whose depth is set for the typical sheet. */
export interface BendRange {
  readonly nominal: AirBend;
  readonly bendAngleReleased: Range;
  readonly peakForcePerLength: Range;
  /**
   * Change of an outside flange length that a stop at a fixed place gives, mm: half the change of the deduction, at the
   * angle that comes out.
   */
  readonly flangeChange: Range;
  /** How it was reckoned, in words. */
  readonly words: string;
}

export interface Scatter {
  /** mm from nominal; zero for a measured sheet. */
  readonly thickness: Pick<ThicknessTolerance, 'minus' | 'plus'>;
  /** Share of the typical strength, least and greatest; from the metal's tensile band when absent. */
  readonly strength?: Range;
  /**
   * What the machine holds: 'ram position' the tip's place above the die, so a thicker sheet is pressed deeper;
   * 'depth from touch' where the control finds the sheet.
   */
  readonly held: 'ram position' | 'depth from touch';
}

export type BendRangeResult =
  | { readonly ok: true; readonly value: BendRange }
  | { readonly ok: false; readonly reason: AirBendReason };

/**
 * Sets the depth for the typical sheet and bends the four corners of thickness and strength with it. A corner that runs
 * onto the die's walls is a failure of the setting and is returned as such.
 */
export const bendRange = (input: AirBendInput, scatter: Scatter): BendRangeResult => {
  const nominal = airBend(input);
  if (!nominal.ok) return nominal;
  const { tensile } = input.metal;
  const strength = scatter.strength ?? { min: tensile.min / tensile.typical, max: tensile.max / tensile.typical };
  const corners: AirBend[] = [nominal.value];
  const { bendAngle: _wanted, ...setup } = input;
  for (const factor of [strength.min, strength.max])
    for (const change of [scatter.thickness.minus, scatter.thickness.plus]) {
      const thickness = input.thickness + change;
      // the tip's place is t - depth above the die: at the same place a sheet thicker by d is pressed deeper by d
      const depth = nominal.value.depth + (scatter.held === 'ram position' ? change : 0);
      const corner = airBendAtDepth({ ...setup, metal: ofStrength(input.metal, factor), thickness, depth });
      if (!corner.ok) return corner;
      corners.push(corner.value);
    }
  const half = nominal.value.deduction / 2;
  return {
    ok: true,
    value: {
      nominal: nominal.value,
      bendAngleReleased: rangeOf(corners.map((c) => c.bendAngleReleased)),
      peakForcePerLength: rangeOf(corners.map((c) => c.peakForcePerLength)),
      flangeChange: rangeOf(corners.map((c) => mouldDeduction(c, input.thickness) / 2 - half)),
      words:
        `Depth set for ${input.thickness} mm and typical strength; thickness ${signed(scatter.thickness.minus)} to ` +
        `${signed(scatter.thickness.plus)} mm, strength ${pct(strength.min)} to ${pct(strength.max)} of typical, ${scatter.held} held.`,
    },
  };
};

/** Kept, so that each metal's section is built once at each end of its band. */
const kept = new WeakMap<Metal, Map<number, Metal>>();
const ofStrength = (metal: Metal, factor: number): Metal => {
  const known = kept.get(metal) ?? new Map<number, Metal>();
  kept.set(metal, known);
  const found = known.get(factor) ?? metalOfStrength(metal, factor);
  known.set(factor, found);
  return found;
};

/** The deduction in the nominal bend's convention does not jump when a corner comes out past 90 degrees. */
const mouldDeduction = (bend: AirBend, thickness: number): number =>
  bend.bendAngleReleased <= 90
    ? bend.deduction
    : bend.deduction + 2 * (bend.insideRadius + thickness) * (Math.tan((bend.bendAngleReleased * Math.PI) / 360) - 1);

const rangeOf = (values: readonly number[]): Range => ({ min: Math.min(...values), max: Math.max(...values) });

const signed = (value: number): string => (value > 0 ? `+${value}` : `${value}`);

const pct = (share: number): string => `${Math.round(share * 100)} %`;

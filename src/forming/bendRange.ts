import { type Metal, metalOfStrength, type ThicknessTolerance } from '../metal/index.js';
import { airBend, airBendAtDepth, airBendToWalls } from './airBend.js';
import type { AirBend, AirBendInput, AirBendReason } from './airBendTypes.js';
import { FORCE_BY_STOCK, forceByStock } from './pressing.js';

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
  /**
   * Where the depth takes one of these sheets onto the die's walls, as the end of a sentence; null where it takes none there. Its angle and
   * flange are those at the walls, its force is that at the walls at least.
   */
  readonly bottoms: string | null;
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

/** A sheet at one end of thickness and strength, in the stroke that is set for the typical one. */
interface End {
  /** mm, and share of the typical strength. */
  readonly thickness: number;
  readonly factor: number;
  /** Null where the strip cannot follow it; as it lies on the die's walls where it comes there before the stroke ends. */
  readonly bend: AirBend | null;
  readonly forcePerLength: number;
  /** Why the stroke does not bend it in air; null where it does. */
  readonly fault: AirBendReason | null;
}

/** `depth` from this sheet's first touch. */
const endOf = ({ bendAngle: _wanted, ...setup }: AirBendInput, nominal: AirBend, thickness: number, factor: number, depth: number): End => {
  const sheet = { ...setup, metal: ofStrength(setup.metal, factor), thickness };
  const bent = airBendAtDepth({ ...sheet, depth });
  const fault = bent.ok ? null : bent.reason;
  const last = fault?.code === 'bottoming' ? airBendToWalls(sheet) : bent;
  const bend = last.ok ? last.value : null;
  return { thickness, factor, bend, fault, forcePerLength: bend?.peakForcePerLength ?? nominal.peakForcePerLength * forceByStock(factor, thickness / setup.thickness) };
};

/**
 * Sets the depth for the typical sheet and bends the four corners of thickness and strength with it. A sheet that comes onto the die's walls
 * before the stroke ends counts as it lies on them; of one that the strip cannot follow the force alone counts, by `forceByStock`. Fails only
 * where the typical sheet does.
 */
export const bendRange = (input: AirBendInput, scatter: Scatter): BendRangeResult => {
  const answer = airBend(input);
  if (!answer.ok) return answer;
  const nominal = answer.value;
  const { tensile } = input.metal;
  const { minus, plus } = scatter.thickness;
  const strength = scatter.strength ?? { min: tensile.min / tensile.typical, max: tensile.max / tensile.typical };
  // the tip's place is t - depth above the die: at the same place a sheet thicker by d is pressed deeper by d
  const ends = [strength.min, strength.max].flatMap((factor) => [minus, plus].map((change) =>
    endOf(input, nominal, input.thickness + change, factor, nominal.depth + (scatter.held === 'ram position' ? change : 0))));
  const bends = [nominal, ...ends.flatMap(({ bend }) => bend ?? [])];
  const half = nominal.deduction / 2;
  const bottoms = bottomsInWords(ends, input.dieAngle);
  return {
    ok: true,
    value: {
      nominal,
      bendAngleReleased: rangeOf(bends.map((b) => b.bendAngleReleased)),
      peakForcePerLength: rangeOf([nominal.peakForcePerLength, ...ends.map((e) => e.forcePerLength)]),
      flangeChange: rangeOf(bends.map((b) => mouldDeduction(b, input.thickness) / 2 - half)),
      bottoms,
      words: [
        `Depth set for ${input.thickness} mm and typical strength; thickness ${signed(minus)} to ${signed(plus)} mm, strength ${pct(strength.min)} to ${pct(strength.max)} of typical, ${scatter.held} held.`,
        ...(bottoms === null ? [] : [`Beware: ${bottoms}.`]),
        ...ends.flatMap((e) => (e.bend !== null || e.fault === null ? [] : [`${sheetInWords(e)} could not be followed, its force is taken ${FORCE_BY_STOCK}: ${e.fault.sentence}`])),
      ].join(' '),
    },
  };
};

const sheetInWords = ({ thickness, factor }: End): string => `${Number(thickness.toFixed(3))} mm of sheet at ${pct(factor)} of typical strength`;

/** mm of stroke on the walls that are told: less is lost in the scatter of the sheet. Common practice, no source. */
const NO_MATTER = 0.005;

/** Of the sheets that lie on the walls before the stroke ends, the one that asks most; null where none does. */
const bottomsInWords = (ends: readonly End[], dieAngle: number): string | null => {
  const [worst] = ends.filter(({ bend, fault }) => bend !== null && fault !== null && (fault.by ?? 0) >= NO_MATTER).sort((a, b) => b.forcePerLength - a.forcePerLength);
  return worst === undefined ? null
    : `the depth set for the typical sheet bottoms the thickest and strongest that its standards let through: ${sheetInWords(worst)} lies on the walls of the die of ${dieAngle} degrees included ` +
      `${(worst.fault?.by ?? 0).toFixed(2)} mm before the stroke ends, at ${worst.forcePerLength.toFixed(0)} N/mm, and asks more to go on`;
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

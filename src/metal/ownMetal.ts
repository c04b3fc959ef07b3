import { scaleCurve, swiftFromTensile } from './curve.js';
import type { Band, HardeningCurve, Metal } from './metal.js';
import { radiusFromReduction } from './textbookRadii.js';

/** A tensile test as the shop's certificate gives it: MPa, percent. */
export interface TensileTest {
  readonly yield: number;
  readonly tensile: number;
  /** Elongation at greatest force Ag, percent, elastic part left out or not (it hardly matters). */
  readonly uniformElongation: number;
  /** Reduction of area Z at break, percent, if it was measured: it tells the least inside radius. */
  readonly reductionOfArea?: number;
  /** Young's modulus if it was measured. */
  readonly modulus?: number;
}

export type OwnMetal =
  | { readonly ok: true; readonly metal: Metal }
  | { readonly ok: false; readonly sentence: string };

/** Scatter within one measured batch, share of the strength. Common practice, no source. */
const BATCH_SCATTER = 0.03;

/**
 * A shop's own metal from a tensile test, for the rest like a metal at hand (density, least radius, gauge).
 *
 * @example metalFromTensileTest('shop-1', 'our 2 mm sheet', { yield: 245, tensile: 340, uniformElongation: 21 }, metalById('dc01')!)
 */
export const metalFromTensileTest = (id: string, name: string, test: TensileTest, like: Metal): OwnMetal => {
  const uniform = Math.log(1 + test.uniformElongation / 100);
  const curve = swiftFromTensile(test.yield, test.tensile, uniform);
  if (curve === null) {
    return {
      ok: false,
      sentence: `No hardening law of Swift's kind has a yield of ${test.yield} MPa, a strength of ${test.tensile} MPa and a uniform elongation of ${test.uniformElongation} percent: check that the last is Ag (at greatest force), not the elongation at break.`,
    };
  }
  const source = `tensile test of the shop: yield ${test.yield}, strength ${test.tensile} MPa, Ag ${test.uniformElongation} percent`;
  return {
    ok: true,
    metal: {
      ...like,
      id,
      name,
      demo: false,
      modulus: test.modulus ?? like.modulus,
      ...measured(curve, test.yield, test.tensile, source),
      ...(test.reductionOfArea === undefined ? {} : { minRadius: fromReduction(test.reductionOfArea) }),
    },
  };
};

/** Textbook, not the standard: along the grain half as much again, common practice. */
const fromReduction = (reductionOfArea: number): Metal['minRadius'] => {
  const across = radiusFromReduction(reductionOfArea);
  return {
    kind: 'factor', across, along: 1.5 * across, mark: 'textbook',
    source: `T (50/r - 1) with the reduction of area r of ${reductionOfArea} percent measured by the shop (Kalpakjian and Schmid, SI 6th ed. 2009, eq. 16.5); along the grain half as much again, common practice, no source`,
  };
};

/** The same metal stronger or softer by a factor on its whole curve: a batch at one end of its range. */
export const metalOfStrength = (metal: Metal, factor: number): Metal => {
  const times = (band: Band): Band => ({ ...band, min: band.min * factor, max: band.max * factor, typical: band.typical * factor });
  return { ...metal, curve: scaleCurve(metal.curve, factor), tensile: times(metal.tensile), yield: times(metal.yield) };
};

/** The parts of a metal that a measured curve settles. */
export const measured = (
  curve: HardeningCurve, yieldStress: number, tensile: number, source: string,
): Pick<Metal, 'curve' | 'curveSource' | 'tensile' | 'yield'> => {
  const band = (typical: number): Band => ({
    min: typical * (1 - BATCH_SCATTER), max: typical * (1 + BATCH_SCATTER), typical, bound: 'none', mark: 'measured', source,
  });
  return { curve, curveSource: { mark: 'measured', source }, tensile: band(tensile), yield: band(yieldStress) };
};

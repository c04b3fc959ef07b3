import { airBend } from './airBend.js';
import type { AirBendInput, AirBendReason } from './airBendTypes.js';
import type { MeasuredDeduction } from './deductionTable.js';

/** mm: along the bend, and across it in all. */
export interface TestStripSize {
  readonly along: number;
  readonly across: number;
}

/** The strip to bend before the first blank: mm, degrees. */
export interface TestStripPlan extends TestStripSize {
  /** Two bends, each on its own strip: the wanted angle, and a flatter one. */
  readonly bends: readonly { readonly bendAngle: number; readonly depth: number }[];
  /** What to read, in the order of doing it. */
  readonly measure: readonly string[];
}

/** Along the bend: long enough to measure at both ends and the middle, and wide against the thickness so that it strains as a wide strip. Common practice, no source. */
const ALONG = 100;
const ALONG_IN_THICKNESS = 20;
/** Each leg: this many V openings, and enough for a protractor's blade. Common practice, no source. */
const LEG_IN_V = 3;
const LEAST_LEG = 50;
/** The second strip's bend angle over the first's: far enough apart to tell the depth's zero from the springback. */
const SECOND = 2 / 3;

/** The size of a test strip for a V opening and a sheet, mm. */
export const testStripSize = (v: number, thickness: number): TestStripSize => ({
  along: Math.max(ALONG, ALONG_IN_THICKNESS * thickness),
  across: 2 * Math.max(LEAST_LEG, LEG_IN_V * v),
});

/** What to bend and measure for a metal batch and a pair of tools that have no measured bends. */
export const testStripFor = (
  input: AirBendInput,
): { readonly ok: true; readonly value: TestStripPlan } | { readonly ok: false; readonly reason: AirBendReason } => {
  const bends: { bendAngle: number; depth: number }[] = [];
  for (const bendAngle of [input.bendAngle, input.bendAngle * SECOND]) {
    const result = airBend({ ...input, bendAngle });
    if (!result.ok) return result;
    bends.push({ bendAngle, depth: result.value.depth });
  }
  const size = testStripSize(input.v, input.thickness);
  return {
    ok: true,
    value: {
      ...size,
      bends,
      measure: [
        `Measure the thickness of both strips at three places, and the length across the bend (${size.across} mm as cut).`,
        `Bend one strip in its middle to depth ${bends[0]!.depth.toFixed(2)} mm from touch and the other to ${bends[1]!.depth.toFixed(2)} mm.`,
        'At the bottom of each stroke read the included angle under load, if a protractor reaches it, and the greatest force.',
        'Released: measure the included angle at both ends and the middle, and both outside leg lengths.',
      ],
    },
  };
};

/**
 * The deduction row that a measured strip gives: both outside legs (to the mould lines up to 90 degrees of bend angle, to
 * the outer tangents above) less the length that it was cut to.
 */
export const deductionFromStrip = (
  tools: Omit<MeasuredDeduction, 'deduction' | 'pieces' | 'spread' | 'note'>,
  strips: readonly { readonly legs: readonly [number, number]; readonly cut: number }[],
): MeasuredDeduction | null => {
  if (strips.length === 0) return null;
  const values = strips.map((s) => s.legs[0] + s.legs[1] - s.cut);
  const deduction = values.reduce((sum, v) => sum + v, 0) / values.length;
  return {
    ...tools, deduction, pieces: values.length, spread: (Math.max(...values) - Math.min(...values)) / 2, note: 'test strip',
  };
};

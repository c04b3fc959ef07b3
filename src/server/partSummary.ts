import type { AllowanceRule } from '../forming/index.js';
import { linearTolerance } from '../metal/index.js';
import { type Blank, type Dimension, type NearFeature, type Part, type SheetFailure, blank, defaultDimensions, develop, featuresNearBends, plateNames, ruleInWords, valueOf } from '../sheet/index.js';
import { describeDimension } from '../trial/index.js';

/** The figures of a part that a page shows beside it. Lengths in mm, angles in degrees turned through. */
export interface PartSummary {
  readonly thickness: number;
  readonly plates: number;
  readonly bends: readonly {
    readonly id: string; readonly kind: string; readonly direction: string; readonly bendAngle: number; readonly insideRadius: number;
    readonly length: number; readonly allowance: number;
  }[];
  /** By the named rule: the real blank belongs to a trial. */
  readonly nominalBlank: { readonly rule: string } & (
    | { readonly ok: true; readonly length: number; readonly width: number; readonly area: number; readonly blank: Blank }
    | { readonly ok: false; readonly failure: SheetFailure }
  );
  /** Holes that a bend may pull out of shape. */
  readonly nearFeatures: readonly NearFeature[];
  /** Of the drawing, or those it would carry by default, with their value in mm. */
  readonly dimensions: readonly { readonly dimension: Dimension; readonly what: string; readonly value: number; readonly classTolerance: number | null }[];
}

export const partSummary = (part: Part, rule: AllowanceRule): PartSummary => {
  const developed = develop(part, rule);
  const flat = blank(developed);
  return {
    thickness: part.thickness,
    plates: part.plates.length,
    bends: part.bends.map(({ id, kind, direction, bendAngle, insideRadius, sides }, index) => ({
      id, kind, direction, bendAngle, insideRadius, allowance: developed.allowances[index]!,
      length: Math.hypot(sides[0].line.to[0] - sides[0].line.from[0], sides[0].line.to[1] - sides[0].line.from[1]),
    })),
    nominalBlank: {
      rule: ruleInWords(rule),
      ...(flat.ok
        ? { ok: true, length: flat.value.length, width: flat.value.width, area: flat.value.area, blank: flat.value }
        : { ok: false, failure: flat.failure }),
    },
    nearFeatures: featuresNearBends(part),
    dimensions: (part.dimensions ?? defaultDimensions(developed)).map((dimension) => {
      const value = valueOf(developed, dimension);
      return { dimension, what: describeDimension(dimension, plateNames(part), part), value, classTolerance: dimension.class ? (linearTolerance(value, dimension.class)?.tolerance ?? null) : null };
    }),
  };
};

import { type ThicknessClass, thicknessTolerance } from '../metal/index.js';
import type { AirBendInput, AirBendReason } from './airBendTypes.js';
import { type BendRange, bendRange, type Scatter } from './bendRange.js';

export type StockRange =
  | { readonly ok: true; readonly value: Omit<BendRange, 'nominal'> & { readonly thicknessSource: string; readonly strengthSource: string } }
  | { readonly ok: false; readonly reason: AirBendReason };

/**
 * What a bend does to stock as bought: the thickness tolerance of the metal's own standard for a sheet of this width, mm,
 * of the class it was bought to, and the metal's band of strength, each with its source.
 */
export const stockRange = (input: AirBendInput, width: number, held: Scatter['held'], category?: ThicknessClass): StockRange => {
  const { metal } = input;
  const tolerance = thicknessTolerance(metal.thicknessStandard, input.thickness, width, category) ?? { minus: 0, plus: 0, source: 'no thickness tolerance known for it: only the strength is varied' };
  const result = bendRange(input, { thickness: tolerance, held });
  if (!result.ok) return result;
  const { nominal: _nominal, ...value } = result.value;
  return { ok: true, value: { ...value, thicknessSource: tolerance.source, strengthSource: metal.tensile.source } };
};

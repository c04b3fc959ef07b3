import type { Mark } from '../metal/index.js';

/** Force of another stroke, least and most: over the air bend's in the same sheet, or N/mm as said. */
export interface PressingFactor {
  readonly stroke: 'bottoming' | 'coining' | 'hem, open' | 'hem, closed' | 'offset in one stroke';
  readonly least: number;
  readonly most: number;
  readonly mark: Mark;
  readonly source: string;
}

/** None of these is published where we could see it: they only size the machine, and say so. */
const PRESSING_FACTORS: readonly PressingFactor[] = [
  { stroke: 'bottoming', least: 3, most: 5, mark: 'common practice', source: 'common practice, no source' },
  { stroke: 'coining', least: 5, most: 10, mark: 'common practice', source: 'common practice, no source' },
  { stroke: 'hem, open', least: 2, most: 3, mark: 'common practice', source: 'common practice, no source' },
  { stroke: 'hem, closed', least: 3, most: 4, mark: 'common practice', source: 'common practice, no source' },
  { stroke: 'offset in one stroke', least: 3, most: 6, mark: 'common practice', source: 'common practice, no source' },
];

/** N/mm for such a stroke, least and most, from the air bend's force. */
export const pressingForce = (stroke: PressingFactor['stroke'], airBendForce: number): { readonly least: number; readonly most: number } => {
  const factor = PRESSING_FACTORS.find((f) => f.stroke === stroke)!;
  return { least: factor.least * airBendForce, most: factor.most * airBendForce };
};

/**
 * How much more another sheet of the same metal asks of a stroke that is not worked out for it, from its strength and thickness over the
 * typical ones: in proportion to strength and to thickness squared, as K Rm t^2 / V. Common practice, no source.
 */
export const forceByStock = (strength: number, thickness: number): number => strength * thickness ** 2;

/** The rule of `forceByStock` as a source is told. */
export const FORCE_BY_STOCK = 'in proportion to tensile strength and to thickness squared, common practice, no source';

/** Force per length of every other stroke in the same sheet, N/mm, least and most; none of them is worked out, and each says so. */
export const otherStrokes = (airBendForce: number): readonly PressingFactor[] =>
  PRESSING_FACTORS.map((f) => ({ ...f, least: f.least * airBendForce, most: f.most * airBendForce }));

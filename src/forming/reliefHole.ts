import type { Metal } from '../metal/index.js';

/** A hole where two bends meet in a corner, so that the metal does not tear there. mm. */
export interface ReliefHole {
  /** Least diameter. */
  readonly diameter: number;
  /** How far past the bends' inner tangent lines the hole reaches, least and most. */
  readonly pastTangents: readonly [number, number];
  readonly source: string;
}

const INCH = 25.4;
const SOURCE = 'FAA-H-8083-31A, chapter 4: twice the bend radius, and not under 1/8 inch up to .064 inch of aluminium, 3/16 inch from there to .128 inch';
/** Aluminium up to this thickness (inches) asks at least this diameter (inches); .064 to .072 is not in the text and takes the larger hole. */
const LEAST = [[0.064, 1 / 8], [0.128, 3 / 16]] as const;

/** The aviation handbook's relief hole for aluminium sheet; null for other metals and past its thickness, where it says nothing. */
export const reliefHole = (metal: Pick<Metal, 'family'>, thickness: number, insideRadius: number): ReliefHole | null => {
  const least = metal.family === 'aluminium' ? LEAST.find(([upTo]) => thickness <= upTo * INCH) : undefined;
  return least === undefined ? null : { diameter: Math.max(2 * insideRadius, least[1] * INCH), pastTangents: [INCH / 32, INCH / 16], source: SOURCE };
};

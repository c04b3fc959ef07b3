import { FORCE_BY_STOCK, forceByStock } from '../forming/index.js';
import { type Metal, type ThicknessTolerance, thicknessTolerance } from '../metal/index.js';

/** Width of the sheet as bought, for its thickness tolerance, mm: the data do not say. Common practice, no source. */
export const STOCK_WIDTH = 1250;

/** mm that a sheet of this metal as bought may be off its thickness; null where no standard is known. */
export const stockTolerance = ({ thicknessStandard }: Metal, thickness: number): ThicknessTolerance | null => thicknessTolerance(thicknessStandard, thickness, STOCK_WIDTH);

/** The force of a hem or an offset in the thickest and strongest sheet that the metal's standards let through, over that in the typical one. */
export const strongestSheet = (metal: Metal, thickness: number): number =>
  forceByStock(metal.tensile.max / metal.tensile.typical, 1 + (stockTolerance(metal, thickness)?.plus ?? 0) / thickness);

/** By which rule, as the end of a source. */
export const STRONGEST_SHEET = `for the thickest and strongest sheet ${FORCE_BY_STOCK}`;

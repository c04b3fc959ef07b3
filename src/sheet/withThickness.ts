import { asFormed } from './asFormed.js';
import type { Part } from './part.js';
import { type Result, refused } from './result.js';

/**
 * The part of another sheet: `thickness` in mm, inside radii as they were, the outside lengths of its flanges kept as asFormed keeps them
 * (an outside of r + t is to be had from r and the new t). 'inside out' when a plate has not that much flat metal, or when a bend is too sharp
 * for a sheet so much thicker.
 */
export const withThickness = (part: Part, thickness: number): Result<Part> => {
  const more = thickness - part.thickness;
  const sharp = part.bends.find((bend) => bend.insideRadius < more);
  if (sharp) return refused('inside out', `Bend ${sharp.id} has an inside radius of ${sharp.insideRadius.toFixed(2)} mm: a sheet ${more.toFixed(2)} mm thicker does not keep its outside.`);
  // as if drawn with the new sheet: the same outside, so an inside radius less by what the sheet is thicker
  const drawn: Part = { ...part, thickness, bends: part.bends.map((bend) => ({ ...bend, insideRadius: bend.insideRadius - more })) };
  return asFormed(drawn, part.bends.map(({ insideRadius }) => ({ insideRadius })));
};

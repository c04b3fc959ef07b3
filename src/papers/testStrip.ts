import type { TestStrip } from '../fit/index.js';
import { type Units, fineText, roundText } from './format.js';

/** What to do with a strip, in words. */
export const testStripWords = ({ station, along, across, bends: [first, second] }: TestStrip, units: Units): string => {
  const wanted = `wanted: bend angle ${first!.bendAngle.toFixed(1)}°, included angle ${(180 - first!.bendAngle).toFixed(1)}°.`;
  const size = `${roundText(along, units)} along the bend by ${roundText(across, units)} across it from the same sheet, in the blank's rolling direction.`;
  const depth = (b: TestStrip['bends'][number]): string => `${fineText(b.depth, units)} from touch`;
  const then = 'Measure thickness, both legs outside and the angle; correct depth and stops before the first blank.';
  return second === undefined
    ? `Cut a strip ${size} Bend its middle at station ${station} to depth ${depth(first!)}; ${wanted} ${then}`
    : `Cut two strips ${size} Bend the middle of the first at station ${station} to depth ${depth(first!)}; ${wanted} Bend the second to depth ` +
      `${depth(second)} (bend angle ${second.bendAngle.toFixed(1)}°): two angles and the force or angle under load tell the batch's strength and the deduction. ${then}`;
};

import { apply, compose, invert } from '../geometry/index.js';
import { fold, middleFrame } from '../sheet/index.js';
import { anglesAfter, bendIndex } from '../stroke/index.js';
import type { Step, Trial } from '../trial/index.js';

/**
 * How far the sheet, lying in the machine for a step, reaches behind the bending plane, and how wide it is along the bed.
 * mm; from the corners of its plates, arcs by their ends.
 */
export const reachBehind = (trial: Trial, step: Step): { readonly reach: number; readonly width: number } => {
  const { sheet } = trial;
  const { bends, plates } = sheet.part;
  const index = bendIndex(trial, step.bends[0]!);
  const root = bends[index]!.sides[step.gaugeSide].plate;
  // as the steps before have left it: a hem may be pre-bent only, a bend begun
  const { poses } = fold(sheet, anglesAfter(trial, step.number - 1), root);
  const toMiddle = invert(middleFrame(sheet, index, 0, step.gaugeSide));
  const seen = plates.flatMap((plate, p) => {
    const pose = compose(toMiddle, poses[p]!);
    return plate.outline.map((v) => apply(pose, [v.x, v.y, 0]));
  });
  const sign = step.gaugeSide === 1 ? 1 : -1;
  const alongs = seen.map((p) => p[0]);
  return { reach: Math.max(0, ...seen.map((p) => sign * p[1])), width: Math.max(...alongs) - Math.min(...alongs) };
};

import { type Rigid, compose, invert } from '../geometry/index.js';
import { alongArc } from './arc.js';
import { bendFrame } from './bendFrame.js';
import type { Developed } from './developed.js';

/**
 * The frame of the plate at side 1 in the frame of the plate at side 0, with bend `bend` (index into the part's bends)
 * turned through `angle` degrees: M = F0 . E . F1^-1 of docs/kinematics.md.
 */
export const acrossBend = (sheet: Developed, bend: number, angle: number): Rigid => {
  const [side0, side1] = sheet.part.bends[bend]!.sides;
  return compose(compose(bendFrame(side0.line), alongArc(sheet, bend, angle, 1)), invert(bendFrame(side1.line)));
};

/**
 * The frame of the bend's middle, where the punch stands: origin on the middle surface at half the arc and u = 0,
 * x = u, y = tangent from side 0 to side 1, z out of the A side; given in the frame of the plate at `side`.
 */
export const middleFrame = (sheet: Developed, bend: number, angle: number, side: 0 | 1): Rigid => {
  const middle = compose(bendFrame(sheet.part.bends[bend]!.sides[0].line), alongArc(sheet, bend, angle, 0.5));
  return side === 0 ? middle : compose(invert(acrossBend(sheet, bend, angle)), middle);
};

import { type Vec2, add2, left2, scale2, sub2, unit2 } from '../geometry/index.js';
import type { Developed } from './developed.js';
import type { Bend, BendSide } from './part.js';

const RADIANS = Math.PI / 180;

/** How one bend came out other than meant. The metal under it is what it is: every plate gains what its neighbour loses. */
export interface BendDeviation {
  /** mm by which the bend line lies off in the flat, at its middle: from side 0 towards side 1. */
  readonly shift: number;
  /** Radians by which it is turned in the flat about its middle, anticlockwise seen from the A side. */
  readonly skew: number;
  /** Degrees of bend angle, the radius held. */
  readonly angle: number;
  /** mm by which both flanges together come out longer outside than reckoned. */
  readonly deduction: number;
}

export const NO_DEVIATION: BendDeviation = { shift: 0, skew: 0, angle: 0, deduction: 0 };

/**
 * The sheet as it folds when bends came out other than meant and the metal is `thicker` by so many mm. A plate's frame stays with
 * its metal; the flat blank, where all angles are 0, is the same but for second order. Outlines are left alone: only fold this.
 * The neutral line keeps its share of the thickness.
 */
export const deviated = (sheet: Developed, of: (bend: number) => BendDeviation, thicker = 0): Developed => {
  const { part } = sheet;
  const allowances = [...sheet.allowances];
  const bends = part.bends.map((bend, i): Bend => {
    const { shift, skew, angle, deduction } = of(i);
    if (shift === 0 && skew === 0 && angle === 0 && deduction === 0 && thicker === 0) return bend;
    const before = sheet.allowances[i]!;
    const neutral = before / (bend.bendAngle * RADIANS) - bend.insideRadius;
    const grown = neutral * (1 + thicker / part.thickness);
    const after = (bend.insideRadius + grown) * (bend.bendAngle + angle) * RADIANS - deduction;
    allowances[i] = after;
    const sides = bend.sides.map((side, which): BendSide => {
      const { from, to } = side.line;
      const u = unit2(sub2(to, from));
      const v = left2(u);
      // the strip's middle stays where the punch stood; what it takes up less is left to the plates
      const off = (which === 0 ? 1 : -1) * (before - after) * 0.5 + shift;
      const middle = add2(scale2(add2(from, to), 0.5), scale2(v, (which === 0 ? 1 : -1) * before * 0.5));
      const [c, s] = [Math.cos(skew), Math.sin(skew)];
      const turned = (p: Vec2): Vec2 => {
        const [x, y] = sub2(p, middle);
        return add2(middle, [c * x - s * y, s * x + c * y]);
      };
      const v2: Vec2 = [c * v[0] - s * v[1], s * v[0] + c * v[1]];
      // the shift is along the unturned normal, the strip's own share along the turned one
      const moved = (p: Vec2): Vec2 => add2(turned(p), add2(scale2(v2, off - shift), scale2(v, shift)));
      return { plate: side.plate, line: { from: moved(from), to: moved(to) } };
    });
    return { ...bend, bendAngle: bend.bendAngle + angle, sides: [sides[0]!, sides[1]!] };
  });
  return { part: { ...part, bends, thickness: part.thickness + thicker }, allowances };
};

import { type Vec3, compose, cross3, length3, sub3 } from '../geometry/index.js';
import { type Bend, type Developed, fold, middleFrame } from '../sheet/index.js';

/** mm: bend lines that lie this near to one straight line in the flat are drawn as one; readers round to less. */
const ON_ONE_LINE = 0.05;
/** Degrees, and mm of inside radius, below which two bends are drawn alike. */
const ALIKE = 0.01;

const alike = (a: Bend, b: Bend): boolean =>
  a.kind === b.kind &&
  a.direction === b.direction &&
  Math.abs(a.bendAngle - b.bendAngle) < ALIKE &&
  Math.abs(a.insideRadius - b.insideRadius) < ALIKE;

interface FlatLine {
  readonly bend: Bend;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly along: Vec3;
}

const onOneLine = (a: FlatLine, b: FlatLine): boolean =>
  [b.from, b.to].every((p) => length3(cross3(a.along, sub3(p, a.from))) < ON_ONE_LINE);

/**
 * How many strokes the part takes if every set of bends that lie on one straight line of the flat sheet, alike in angle,
 * direction and radius, is made at once; a hem counts once. A count for an overview: the trial decides what one stroke can make.
 */
export const strokes = (sheet: Developed): number => {
  const { part } = sheet;
  const { poses } = fold(sheet, part.bends.map(() => 0));
  const groups: FlatLine[] = [];
  part.bends.forEach((bend, i) => {
    const { o, x } = compose(poses[bend.sides[0].plate]!, middleFrame(sheet, i, 0, 0));
    const { from, to } = bend.sides[0].line;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const line: FlatLine = { bend, from: o, to: [o[0] + x[0] * length, o[1] + x[1] * length, o[2] + x[2] * length], along: x };
    if (!groups.some((group) => alike(group.bend, bend) && onOneLine(group, line))) groups.push(line);
  });
  return groups.length;
};

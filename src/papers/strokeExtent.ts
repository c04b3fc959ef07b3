import { apply, compose, dot2, sub2, unit2 } from '../geometry/index.js';
import { bendFrame, fold } from '../sheet/index.js';
import { bendIndex, rootOf } from '../stroke/index.js';
import type { Step, Trial } from '../trial/index.js';

/** From where to where all bends of a stroke reach, mm along the first one's bend line from where its `sides[0].line` begins. */
export const strokeExtent = (trial: Trial, step: Step): readonly [number, number] => {
  const { sheet } = trial;
  const bends = step.bends.map((id) => sheet.part.bends[bendIndex(trial, id)]!);
  const [{ line }] = bends[0]!.sides;
  const way = unit2(sub2(line.to, line.from));
  // bends of one stroke lie on one line of the plate that they share: laid flat they lie as they do under the punch
  const { poses } = fold(sheet, sheet.part.bends.map(() => 0), rootOf(trial, step));
  const places = bends.flatMap(({ sides: [side], zone }) => {
    const frame = compose(poses[side.plate]!, bendFrame(side.line));
    return zone.flat().map(({ x: u }) => {
      const [x, y] = apply(frame, [u, 0, 0]);
      return dot2(sub2([x, y], line.from), way);
    });
  });
  return [Math.min(...places), Math.max(...places)];
};

import { type Vec2, apply, turn } from '../geometry/index.js';
import { type Feature, readings, valueOf } from '../sheet/index.js';
import type { Deviations, Placed } from './deviations.js';
import { bitsOf } from './groups.js';
import { startOf } from './stroke.js';
import type { StrokeOption } from './strokeOption.js';
import type { Planned } from './task.js';
import type { Step } from './trial.js';

/** A normal lies along an axis within this sine. */
const SQUARE = 1e-3;
/** Bend angles so near to 90 are square. Degrees */
const SQUARE_BEND = 0.5;
/** What is measured is what the step names when both lengths agree so far. mm */
const SAME_LENGTH = 0.05;

/** The features of a wing's metal furthest from the running bend, and how far. mm from the wing's tangent line */
const furthest = ({ setting: { views, sheet } }: StrokeOption, onGauge: boolean): { readonly feature: Feature; readonly reach: number } | null => {
  const out = onGauge ? 1 : -1;
  let best: { feature: Feature; reach: number } | null = null;
  const take = (feature: Feature, reach: number): void => {
    if (!best || reach > best.reach) best = { feature, reach };
  };
  for (const view of views.filter((v) => v.onGaugeSide === onGauge)) {
    const { outline } = sheet.part.plates[view.plate]!;
    const normal = turn(view.pose, [0, 0, 1]);
    if (Math.hypot(normal[0], normal[2]) < SQUARE) {
      take({ kind: 'face', plate: view.plate, side: normal[1] * out > 0 ? 'A' : 'B' }, out * apply(view.pose, [outline[0]!.x, outline[0]!.y, 0])[1] + sheet.part.thickness / 2);
      continue;
    }
    if (Math.hypot(normal[0], normal[1]) > SQUARE) continue;
    outline.forEach((v, i) => {
      const w = outline[(i + 1) % outline.length]!;
      const size = Math.hypot(w.x - v.x, w.y - v.y);
      if (v.bulge !== 0 || size === 0) return;
      const outwards = turn(view.pose, [(w.y - v.y) / size, (v.x - w.x) / size, 0]);
      if (outwards[1] * out < 0 || Math.hypot(outwards[0], outwards[2]) > SQUARE) return;
      const middle: Vec2 = [(v.x + w.x) / 2, (v.y + w.y) / 2];
      take({ kind: 'edge', plate: view.plate, at: middle }, out * apply(view.pose, [middle[0], middle[1], 0])[1]);
    });
  }
  return best;
};

/**
 * The steps with what is expected of the flange to be measured after each: how far the first piece, and the batch after its correction,
 * come out from the length named (root of the sum of squares, mm), by the errors of the strokes made so far. Left out where
 * the furthest metal is no edge or face parallel to the bend, and after strokes that place nothing.
 */
export const withMeasured = (steps: readonly Step[], plan: readonly Planned[], deviations: Deviations, anglesOf: (mask: number) => (bend: number) => number): readonly Step[] => {
  let placed: Placed = new Map();
  return steps.map((step, i) => {
    const { option, mask } = plan[i]!;
    placed = deviations.place(placed, option);
    const { sheet, group, views, bend } = option.setting;
    if (bend.kind !== 'V' || startOf(bend) > 0) return step;
    const first = group.bends[0]!;
    const angle = anglesOf(mask | bitsOf(group));
    const both = [true, false].flatMap((onGauge) => {
      const end = furthest(option, onGauge);
      const wing = views.find((v) => v.wing && v.onGaugeSide === onGauge)!;
      return end ? [{ ...end, wing: wing.plate }] : [];
    });
    const end = both.sort((a, b) => a.reach - b.reach)[0];
    if (!end) return step;
    const { bendAngle, direction, sides } = sheet.part.bends[first]!;
    const other = sides.find((s) => s.plate !== end.wing)!.plate;
    // square to it, the neighbour's outer face is where a caliper is laid
    const datum: Feature = Math.abs(bendAngle - 90) < SQUARE_BEND ? { kind: 'face', plate: other, side: direction === 'A' ? 'B' : 'A' } : { kind: 'corner', plate: end.wing, bend: first };
    const dimension = { between: [datum, end.feature] } as const;
    const angles = sheet.part.bends.map((_, b) => angle(b));
    if (Math.abs(valueOf(sheet, dimension, angles) - step.measure.length) > SAME_LENGTH) return step;
    const { firstPiece, batch } = deviations.predict(readings(sheet, dimension, angles), placed, (b) => angle(b) > 0);
    return { ...step, measure: { ...step.measure, firstPiece: firstPiece.rootSumSquare, batch: batch.rootSumSquare } };
  });
};

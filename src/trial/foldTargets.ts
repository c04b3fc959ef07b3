import { type Interval, type Vec3, apply, turn } from '../geometry/index.js';
import { arcRuns } from '../sheet/index.js';
import { foldOf } from './hemClose.js';
import type { Setting } from './setting.js';
import { startOf, wingsAt } from './stroke.js';
import type { View } from './views.js';

/** The fold of a hem that faces the gauge: back and up of its outermost line from the die top, and where it lies along the bed. */
export interface FoldTarget {
  /** The plate that the hem is folded from, lying level. */
  readonly view: View;
  readonly fold: string;
  readonly back: number;
  readonly up: number;
  readonly line: Interval;
}

/** Square to the back, and level, within this sine. */
const SQUARE = 1e-3;

/** A fold turned through less than this has no outermost line: degrees of bend angle. */
const UPRIGHT = 90;

/**
 * What later stops meet of a hem: not the plate's edge but the fold, two thicknesses high when closed. Also the fold of the
 * hem that is being closed, against which the fingers stand.
 */
export const foldTargets = (setting: Setting): readonly FoldTarget[] => {
  const { views, sheet, bend, seat, angleOf } = setting;
  const { part } = sheet;
  const wings = wingsAt(bend, startOf(bend));
  const closing = bend.kind === 'hem close';
  return part.bends.flatMap((hem, index): FoldTarget[] => {
    const running = seat.bends.includes(index);
    if (!hem.hem || (running && !closing)) return [];
    const angle = running ? startOf(bend) : angleOf(index);
    if (angle <= UPRIGHT) return [];
    return hem.sides.flatMap((side): FoldTarget[] => {
      const view = views.find((v) => v.plate === side.plate);
      if (!view || view.onGaugeSide === running) return [];
      const into = turn(view.pose, [0, 0, hem.direction === 'A' ? 1 : -1]);
      const [dx, dy] = [side.line.to[0] - side.line.from[0], side.line.to[1] - side.line.from[1]];
      const size = Math.hypot(dx, dy);
      const away = side === hem.sides[0] ? 1 : -1;
      const outwards = turn(view.pose, [(-dy / size) * away, (dx / size) * away, 0]);
      if (Math.abs(into[2]) < 1 - SQUARE || outwards[1] < 1 - SQUARE) return [];
      const us = hem.zone.flat().map((v) => v.x);
      const at = (u: number): Vec3 => apply(view.pose, [side.line.from[0] + (dx * u) / size, side.line.from[1] + (dy * u) / size, 0]);
      const ends = [at(Math.min(...us)), at(Math.max(...us))];
      const runs = arcRuns(sheet, index, angle);
      const { past, up } = foldOf(side === hem.sides[0] ? runs : [...runs].reverse(), part.thickness);
      const shift = running ? wings.front : wings.gauge;
      return [{
        view, fold: hem.id, back: shift.x + ends[0]![1] + past, up: ends[0]![2] + part.thickness / 2 + Math.sign(into[2]) * up,
        line: [Math.min(ends[0]![0], ends[1]![0]), Math.max(ends[0]![0], ends[1]![0])],
      }];
    });
  });
};

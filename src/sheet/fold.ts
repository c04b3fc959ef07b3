import { IDENTITY, type Rigid, compose, invert } from '../geometry/index.js';
import { acrossBend } from './acrossBend.js';
import type { Developed } from './developed.js';
import { neighboursOf } from './tree.js';

/** Where every plate of a partly or wholly folded part stands, in the frame of plate `root`. */
export interface Folded {
  readonly root: number;
  /** Of each plate, in the order of `part.plates`. */
  readonly poses: readonly Rigid[];
}

/**
 * Folds the sheet with bend i turned through `angles[i]` degrees (0 flat, `bendAngle` final, slightly beyond while
 * under load), each bend an arc of constant flat length (docs/kinematics.md). The part must be a tree (see `tree`).
 *
 * @example fold(sheet, sheet.part.bends.map((bend) => bend.bendAngle)) // the finished part, seen from plate 0
 */
export const fold = (sheet: Developed, angles: readonly number[], root = 0): Folded => {
  const { part } = sheet;
  const neighbours = neighboursOf(part);
  const poses: (Rigid | undefined)[] = part.plates.map(() => undefined);
  poses[root] = IDENTITY;
  const open = [root];
  for (let plate = open.pop(); plate !== undefined; plate = open.pop()) {
    for (const next of neighbours[plate]!) {
      if (poses[next.plate] !== undefined) continue;
      const step = acrossBend(sheet, next.bend, angles[next.bend]!);
      const forward = part.bends[next.bend]!.sides[0].plate === plate;
      poses[next.plate] = compose(poses[plate]!, forward ? step : invert(step));
      open.push(next.plate);
    }
  }
  return {
    root,
    poses: poses.map((pose, plate) => {
      if (pose === undefined) throw new Error(`plate ${plate} of "${part.name}" hangs on no bend: check with tree() first`);
      return pose;
    }),
  };
};

import { type Rigid, IDENTITY, compose, invert } from '../geometry/index.js';
import type { Developed } from '../sheet/index.js';
import { type BendShape, acrossBend } from './bendShape.js';

/** Each plate's frame in that of plate `root`, the bends at `angles` (radians). Plates not joined to it are left out. */
export const platePoses = (
  sheet: Developed,
  shapes: readonly BendShape[],
  angles: readonly number[],
  root: number,
): ReadonlyMap<number, Rigid> => {
  const poses = new Map<number, Rigid>([[root, IDENTITY]]);
  const queue = [root];
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    sheet.part.bends.forEach((bend, i) => {
      const end = bend.sides.findIndex((s) => s.plate === at);
      if (end < 0) return;
      const other = bend.sides[end === 0 ? 1 : 0].plate;
      if (poses.has(other)) return;
      const across = acrossBend(bend, shapes[i]!, angles[i]!);
      poses.set(other, compose(poses.get(at)!, end === 0 ? across : invert(across)));
      queue.push(other);
    });
  }
  return poses;
};

/** What people call the plates, by the bend that joins each to the side of plate 0. */
export const plateNames = (sheet: Developed): readonly string[] => {
  const { plates, bends } = sheet.part;
  const names = plates.map((_, i) => (i === 0 ? 'the base' : `plate ${i}`));
  const seen = new Set([0]);
  const queue = [0];
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    for (const bend of bends) {
      const [p, q] = [bend.sides[0].plate, bend.sides[1].plate];
      const other = p === at ? q : q === at ? p : undefined;
      if (other === undefined || seen.has(other)) continue;
      seen.add(other);
      names[other] = `the flange beyond ${bend.id}`;
      queue.push(other);
    }
  }
  return names;
};

import { type Rigid, IDENTITY, compose, invert, signedArea } from '../geometry/index.js';
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

/**
 * What people call the plates, by the rule of the sheet's own names, worked out here since this room checks that one's work: the base is the
 * plate of the greatest area times number of bends, every other one the flange beyond the bend that joins it to the base's side.
 */
export const plateNames = (sheet: Developed): readonly string[] => {
  const { plates, bends } = sheet.part;
  const ends = bends.map(({ sides }) => [sides[0].plate, sides[1].plate] as const);
  const weights = plates.map(({ outline }, i) => Math.abs(signedArea(outline)) * ends.filter(([p, q]) => p === i || q === i).length);
  const base = weights.indexOf(Math.max(...weights));
  const names = plates.map((_, i) => (bends.length === 0 ? 'the sheet' : i === base ? 'the base' : `plate ${i + 1}`));
  const seen = new Set([base]);
  const queue = [base];
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    ends.forEach(([p, q], b) => {
      const other = p === at ? q : q === at ? p : undefined;
      if (other === undefined || seen.has(other)) return;
      seen.add(other);
      names[other] = `the flange beyond ${bends[b]!.id}`;
      queue.push(other);
    });
  }
  return names;
};

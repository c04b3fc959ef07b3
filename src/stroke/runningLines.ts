import { type Rigid, type Vec2, apply, compose, invert } from '../geometry/index.js';
import { alongArc, bendFrame, fold } from '../sheet/index.js';
import type { Step, Trial } from '../trial/index.js';
import { anglesDuring, bendIndex, rootOf } from './record.js';
import { seatPose } from './seatPose.js';

/** Pieces that an arc is drawn in: of a hem of 3 mm middle radius a chord leaves it by 0.002 mm at most. */
const PIECES = 48;
/** mm and share: two plates are one plane within this; rounding of poses. */
const LEVEL = 1e-6;

/**
 * Both faces of the metal that a stroke turns, seen along the bed: the arcs of its bends, and the plates beside them with what lies
 * flat with these, out to their furthest metal. Lines in (back, up) of the machine, the running bends at `angle` degrees.
 */
export const runningLines = (trial: Trial, step: Step, angle: number): readonly (readonly Vec2[])[] => {
  const { sheet } = trial;
  const half = sheet.part.thickness / 2;
  const angles = anglesDuring(trial, step, angle);
  const seat = seatPose(trial, step, angle);
  const poses = fold(sheet, angles, rootOf(trial, step)).poses.map((own) => compose(seat, own));
  const faces = (frames: readonly Rigid[]): Vec2[][] =>
    [half, -half].map((z) => frames.map((frame): Vec2 => {
      const p = apply(frame, [0, 0, z]);
      return [p[1], p[2]];
    }));
  return step.bends.flatMap((id) => {
    const index = bendIndex(trial, id);
    const { sides } = sheet.part.bends[index]!;
    const base = compose(poses[sides[0].plate]!, bendFrame(sides[0].line));
    const arc = faces(Array.from({ length: PIECES + 1 }, (_, k) => compose(base, alongArc(sheet, index, angle, k / PIECES))));
    const flats = sides.flatMap(({ plate, line }, end) => {
      const frame = compose(poses[plate]!, bendFrame(line));
      const into = invert(frame);
      // away from the bend: plate 1 lies to the left of its line, plate 0 to the right of its own
      const out = end === 1 ? 1 : -1;
      const reach = sheet.part.plates.flatMap(({ outline }, p) => {
        const seen = compose(into, poses[p]!);
        const level = Math.abs(seen.z[0]) < LEVEL && Math.abs(seen.z[1]) < LEVEL && Math.abs(seen.o[2]) < LEVEL;
        return level ? outline.map((v) => out * apply(seen, [v.x, v.y, 0])[1]) : [];
      });
      const far = Math.max(0, ...reach);
      return faces([frame, { ...frame, o: apply(frame, [0, out * far, 0]) }]);
    });
    return [...arc, ...flats];
  });
};

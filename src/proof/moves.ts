import { type Rigid, type Vec2, type Vec3, IDENTITY, compose, shift } from '../geometry/index.js';
import type { Move } from '../trial/index.js';

const RADIANS = Math.PI / 180;

/** A move with the part's displacement from its seat before it, and how it goes on from there. */
export type Placement =
  | { readonly kind: 'shift'; readonly before: Rigid; readonly by: Vec3 }
  | { readonly kind: 'tilt'; readonly before: Rigid; readonly degrees: number; readonly pivotUp: number };

/** A turn about the line (back 0, up `pivotUp`) parallel to the bed; positive lifts what lies towards the gauge. */
export const tiltBy = (degrees: number, pivotUp: number): Rigid => {
  const [c, s] = [Math.cos(degrees * RADIANS), Math.sin(degrees * RADIANS)];
  return { x: [1, 0, 0], y: [0, c, s], z: [0, -s, c], o: [0, s * pivotUp, pivotUp - c * pivotUp] };
};

/** The moves out in order, the inner apex standing at (back 0, `apexUp`) before the first; and the displacement after the last. */
export const movesOut = (moves: readonly Move[], apexUp: number): { readonly list: Placement[]; readonly end: Rigid } => {
  let apex: Vec2 = [0, apexUp];
  let end = IDENTITY;
  const list: Placement[] = [];
  for (const move of moves) {
    if (move.kind === 'shift') {
      list.push({ kind: 'shift', before: end, by: move.by });
      end = compose(shift(move.by), end);
      apex = [apex[0] + move.by[1], apex[1] + move.by[2]];
    } else {
      list.push({ kind: 'tilt', before: end, degrees: move.degrees, pivotUp: apex[1] });
      end = compose(tiltBy(move.degrees, apex[1]), end);
      const [c, s] = [Math.cos(move.degrees * RADIANS), Math.sin(move.degrees * RADIANS)];
      apex = [apex[0] * c, apex[1] + apex[0] * s];
    }
  }
  return { list, end };
};

/** The moves in, in order, that bring the part to its seat, where the inner apex stands at (back 0, `apexUp`). */
export const movesIn = (moves: readonly Move[], apexUp: number): { readonly list: Placement[]; readonly start: Rigid } => {
  let apex: Vec2 = [0, apexUp];
  let start = IDENTITY;
  const list: Placement[] = [];
  for (const move of [...moves].reverse()) {
    if (move.kind === 'shift') {
      start = compose(shift([-move.by[0], -move.by[1], -move.by[2]]), start);
      apex = [apex[0] - move.by[1], apex[1] - move.by[2]];
      list.unshift({ kind: 'shift', before: start, by: move.by });
    } else {
      // the turn leaves the apex at back * cos, up + back * sin of where it was before
      const [c, s] = [Math.cos(move.degrees * RADIANS), Math.sin(move.degrees * RADIANS)];
      const back = apex[0] / c;
      apex = [back, apex[1] - back * s];
      start = compose(tiltBy(-move.degrees, apex[1]), start);
      list.unshift({ kind: 'tilt', before: start, degrees: move.degrees, pivotUp: apex[1] });
    }
  }
  return { list, start };
};

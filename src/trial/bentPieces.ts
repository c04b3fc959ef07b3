import { type Interval, apply } from '../geometry/index.js';
import type { Bend, Part } from '../sheet/index.js';
import type { Group } from './groups.js';
import { lengthsBent } from './strokeLength.js';
import { type Seat, wingFrame } from './views.js';

/** For each bend of a group, where lengths of its line lie along the bed, from the first bend's origin. mm */
const onBed = ({ bends }: Part, seat: Seat, group: Group, lengthsOf: (bend: Bend) => readonly Interval[]): readonly (readonly Interval[])[] => {
  const into = wingFrame(bends[group.bends[0]!]!, seat.gaugeSide, group.hubSide);
  return group.bends.map((index) => {
    const bend = bends[index]!;
    const { line: { from, to } } = bend.sides.find((s) => s.plate === group.hub)!;
    const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const lengths = lengthsOf(bend);
    return (lengths.length > 0 ? lengths : [[0, size] as const]).map((ends): Interval => {
      const places = ends.map((u) => apply(into, [from[0] + ((to[0] - from[0]) * u) / size, from[1] + ((to[1] - from[1]) * u) / size, 0])[0]);
      return [Math.min(...places), Math.max(...places)];
    });
  });
};

/** For each bend of a group, where the pieces of its metal lie along the bed, from the first bend's origin. mm */
export const bentPieces = (part: Part, seat: Seat, group: Group): readonly (readonly Interval[])[] => onBed(part, seat, group, lengthsBent);

/** Where the bend lines of a group lie along the bed, with all metal of their zones, from the first bend's origin. mm */
export const bendLine = (part: Part, seat: Seat, group: Group): Interval => {
  const pieces = onBed(part, seat, group, ({ zone }) => {
    const us = zone.flat().map((v) => v.x);
    return us.length > 0 ? [[Math.min(...us), Math.max(...us)]] : [];
  }).flat();
  return [Math.min(...pieces.map(([from]) => from)), Math.max(...pieces.map(([, to]) => to))];
};

/**
 * Where a stroke's force lies along the bed, from the first bend's origin: the middle of all metal that it bends, which pieces of
 * unequal length pull away from the middle of the line. An offset tool presses on the first of its bends' length. mm
 */
export const resultantOf = (part: Part, seat: Seat, group: Group): number => {
  const pieces = bentPieces(part, seat, group).slice(0, group.offset ? 1 : undefined).flat();
  const length = pieces.reduce((sum, [from, to]) => sum + to - from, 0);
  return pieces.reduce((sum, [from, to]) => sum + ((to - from) * (from + to)) / 2, 0) / length;
};

import { type Vec2, add2, length2, scale2, sub2, unit2 } from '../geometry/index.js';
import { clipZone } from './clipZone.js';
import { inLine } from './inLine.js';
import { ON_LINE } from './moveOnLine.js';
import type { Bend, Line, Part, Plate } from './part.js';

const point = (v: { readonly x: number; readonly y: number }): Vec2 => [v.x, v.y];

/** The first and last place (mm along the line) where a straight edge of the plate lies on the line; null if none does. */
const covered = (plate: Plate, line: Line): readonly [number, number] | null => {
  const length = length2(sub2(line.to, line.from));
  let [low, high] = [Infinity, -Infinity];
  for (const contour of [plate.outline, ...plate.holes]) {
    const places = contour.map((v) => inLine(line, point(v)));
    contour.forEach((v, i) => {
      const [p, q] = [places[i]!, places[(i + 1) % contour.length]!];
      if (v.bulge !== 0 || Math.abs(p[1]) > ON_LINE || Math.abs(q[1]) > ON_LINE) return;
      const [from, to] = [Math.max(0, Math.min(p[0], q[0])), Math.min(length, Math.max(p[0], q[0]))];
      if (to - from > ON_LINE) [low, high] = [Math.min(low, from), Math.max(high, to)];
    });
  }
  return low < high ? [low, high] : null;
};

/**
 * Where a plate's corner has moved along a neighbouring bend's line, that bend reaches past its plate: it is shortened
 * to what is left, as a corner relief does in the trade.
 */
export const relieved = (before: Part, after: readonly Plate[], bend: Bend, was: Bend): Bend => {
  const length = length2(sub2(bend.sides[0].line.to, bend.sides[0].line.from));
  let [low, high] = [0, length];
  bend.sides.forEach((side, which) => {
    const old = covered(before.plates[side.plate]!, was.sides[which as 0 | 1].line);
    const now = covered(after[side.plate]!, side.line);
    if (old === null || now === null) return;
    if (now[0] - old[0] > ON_LINE) low = Math.max(low, now[0]);
    if (old[1] - now[1] > ON_LINE) high = Math.min(high, now[1]);
  });
  if (low === 0 && high === length) return bend;
  const cut = (line: Line): Line => {
    const u = unit2(sub2(line.to, line.from));
    return { from: add2(line.from, scale2(u, low)), to: add2(line.from, scale2(u, high)) };
  };
  const [side0, side1] = bend.sides;
  return {
    ...bend,
    sides: [
      { plate: side0.plate, line: cut(side0.line) },
      { plate: side1.plate, line: cut(side1.line) },
    ],
    zone: clipZone(bend.zone, low, high),
  };
};

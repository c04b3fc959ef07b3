import { type Contour, type Rigid, type Vec2, apply } from '../geometry/index.js';
import { type Developed, fold } from '../sheet/index.js';

/**
 * A way to lay the flat blank onto itself that takes every bend to one like it. What is true of a stroke with some bends made is
 * true of its image with their images made, at the same cost.
 */
export interface Symmetry {
  /** For each bend, the bend that it is taken to. */
  readonly bendTo: readonly number[];
  /** Where a direction in the blank's plane goes. Degrees */
  readonly turned: (degrees: number) => number;
}

/** Corners and lines that lie nearer than this are the same: drawn parts are symmetrical to rounding. mm */
const SAME_PLACE = 0.01;
const SAME_ANGLE = 0.001;

const same = (p: Vec2, q: Vec2): boolean => Math.abs(p[0] - q[0]) < SAME_PLACE && Math.abs(p[1] - q[1]) < SAME_PLACE;

interface Mapping {
  readonly point: (p: Vec2) => Vec2;
  readonly mirrors: boolean;
  /** Degrees: the image of direction 0. */
  readonly degrees: number;
}

/** Takes `from` to `to`, and the direction of one line to that of the other. */
const mapping = (from: Vec2, way: number, to: Vec2, toWay: number, mirrors: boolean): Mapping => {
  const turn = mirrors ? toWay + way : toWay - way;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const flip = mirrors ? -1 : 1;
  return {
    mirrors, degrees: (turn * 180) / Math.PI,
    point: ([x, y]) => {
      const [dx, dy] = [x - from[0], flip * (y - from[1])];
      return [to[0] + c * dx - s * dy, to[1] + s * dx + c * dy];
    },
  };
};

interface Corner {
  readonly at: Vec2;
  readonly bulge: number;
  /** mm over the A face (under the B face: negative) that something stands there; 0 on the plate itself. */
  readonly stands: number;
}

interface FlatBend {
  readonly middle: Vec2;
  readonly ends: readonly [Vec2, Vec2];
  readonly way: number;
}

const onFlat = (pose: Rigid, p: Vec2): Vec2 => {
  const [x, y] = apply(pose, [p[0], p[1], 0]);
  return [x, y];
};

/** Does the contour turn at this corner? One that lies on a straight edge may be there or not. */
const turns = (contour: Contour, i: number): boolean => {
  const [before, here, after] = [contour[(i + contour.length - 1) % contour.length]!, contour[i]!, contour[(i + 1) % contour.length]!];
  if (before.bulge !== 0 || here.bulge !== 0) return true;
  const off = Math.abs((here.x - before.x) * (after.y - before.y) - (here.y - before.y) * (after.x - before.x));
  return off > SAME_PLACE * Math.hypot(after.x - before.x, after.y - before.y);
};

const cornersOf = (pose: Rigid, contours: readonly Contour[], stands = 0): readonly Corner[] =>
  contours.flatMap((contour) => contour.filter((_, i) => turns(contour, i)).map((v) => ({ at: onFlat(pose, [v.x, v.y]), bulge: Math.abs(v.bulge), stands })));

/** The rotations (and with `mirrored`, the reflections too) of a part's blank onto itself, the identity left out. */
export const symmetriesOf = (sheet: Developed, mirrored: boolean): readonly Symmetry[] => {
  const { plates, bends } = sheet.part;
  const { poses } = fold(sheet, bends.map(() => 0));
  // what stands on a plate must come to lie on its like: tools meet it
  const corners = plates.map((p, i) => [
    ...cornersOf(poses[i]!, [p.outline, ...p.holes]),
    ...(sheet.part.formed ?? []).filter(({ plate }) => plate === i).flatMap(({ outline, side, height }) => cornersOf(poses[i]!, [outline], side === 'A' ? height : -height)),
  ]);
  const flat = bends.map((bend): FlatBend => {
    const lines = bend.sides.map(({ plate, line }) => [onFlat(poses[plate]!, line.from), onFlat(poses[plate]!, line.to)] as const);
    const middleOf = (a: Vec2, b: Vec2): Vec2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const ends = [middleOf(lines[0]![0], lines[1]![0]), middleOf(lines[0]![1], lines[1]![1])] as const;
    return { ends, middle: middleOf(ends[0], ends[1]), way: Math.atan2(ends[1][1] - ends[0][1], ends[1][0] - ends[0][0]) };
  });
  const alike = (i: number, k: number): boolean => {
    const [a, b] = [bends[i]!, bends[k]!];
    return a.kind === b.kind && a.direction === b.direction && Math.abs(a.bendAngle - b.bendAngle) < SAME_ANGLE &&
      Math.abs(a.insideRadius - b.insideRadius) < SAME_PLACE && Math.abs(sheet.allowances[i]! - sheet.allowances[k]!) < SAME_PLACE;
  };
  const tried = ({ point, mirrors, degrees }: Mapping): Symmetry | null => {
    const bendTo = flat.map(({ ends: [p, q] }, i) => {
      const [a, b] = [point(p), point(q)];
      return flat.findIndex(({ ends: [u, v] }, k) => alike(i, k) && ((same(a, u) && same(b, v)) || (same(a, v) && same(b, u))));
    });
    if (bendTo.includes(-1)) return null;
    const plateFits = corners.every((mine) => {
      const images = mine.map((c): Corner => ({ ...c, at: point(c.at) }));
      return corners.some((theirs) => theirs.length === images.length && images.every((c) => theirs.some((d) => same(c.at, d.at) && Math.abs(c.bulge - d.bulge) < SAME_ANGLE && Math.abs(c.stands - d.stands) < SAME_PLACE)));
    });
    return plateFits ? { bendTo, turned: (d) => (mirrors ? degrees - d : degrees + d) } : null;
  };
  const found: Symmetry[] = [];
  const first = flat[0];
  if (!first) return found;
  flat.forEach((target, k) => {
    if (!alike(0, k)) return;
    for (const mirrors of mirrored ? [false, true] : [false]) {
      for (const toWay of [target.way, target.way + Math.PI]) {
        const symmetry = tried(mapping(first.middle, first.way, target.middle, toWay, mirrors));
        if (!symmetry) continue;
        // a reflection may leave every bend in place and still turn the sheet round: only the identity is left out
        const isIdentity = !mirrors && symmetry.bendTo.every((to, i) => to === i) && Math.abs(Math.sin((toWay - first.way) / 2)) < SAME_ANGLE;
        if (!isIdentity) found.push(symmetry);
      }
    }
  });
  return found;
};

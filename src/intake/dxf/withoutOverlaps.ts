import { type Vec2, arcOf, dot2, left2, length2, sub2, unit2 } from '../../geometry/index.js';
import type { Curve } from './dxfCurves.js';

/** mm by which two lines may lie apart and still be one line drawn twice: rounding of what wrote the file. */
const SAME_LINE = 1e-3;
/** Radians: `SAME_LINE` over a metre. */
const SAME_WAY = 1e-6;
/** mm of common length below which two lines only meet. */
const MEETS = 5e-3;

export interface Cleaned {
  readonly curves: readonly Curve[];
  /** Curves taken into others, and the length (mm) that was drawn more than once. */
  readonly removed: number;
  readonly length: number;
}

/** A stretch of a carrier (a straight line, or a circle with angles times its radius), mm along it. */
interface Stretch {
  readonly curve: Curve;
  readonly low: number;
  readonly high: number;
}

interface Carrier {
  readonly stretches: Stretch[];
  /** The curves for a stretch from low to high, in the manner of one that was drawn. */
  readonly draw: (low: number, high: number, like: Curve) => Curve[];
  /** mm once round, for circles. */
  readonly round?: number;
}

/** Carriers found again by their three numbers, each within its tolerance. */
const carriers = () => {
  const cells = new Map<string, { readonly numbers: readonly number[]; readonly carrier: Carrier }[]>();
  return (numbers: readonly number[], sizes: readonly number[], make: () => Carrier): Carrier => {
    const cell = numbers.map((x, i) => Math.floor(x / sizes[i]!));
    const keys = numbers.reduce<number[][]>((found, _, i) => found.flatMap((key) => [-1, 0, 1].map((d) => [...key, cell[i]! + d])), [[]]);
    for (const key of keys) {
      const found = cells.get(key.join())?.find((it) => it.numbers.every((x, i) => Math.abs(x - numbers[i]!) < sizes[i]!));
      if (found !== undefined) return found.carrier;
    }
    const carrier = make();
    const key = cell.join();
    cells.set(key, [...(cells.get(key) ?? []), { numbers, carrier }]);
    return carrier;
  };
};

const straight = (way: Vec2, off: number): Carrier => ({
  stretches: [],
  draw: (low, high, like) => {
    const at = (s: number): Vec2 => [way[0] * s - way[1] * off, way[1] * s + way[0] * off];
    return [{ ...like, from: at(low), to: at(high), bulge: 0 }];
  },
});

const circular = (centre: Vec2, radius: number): Carrier => ({
  stretches: [],
  round: 2 * Math.PI * radius,
  draw: (low, high, like) => {
    const [start, sweep] = [low / radius, (high - low) / radius];
    const pieces = sweep > Math.PI ? 2 : 1;
    const at = (k: number): Vec2 => [centre[0] + radius * Math.cos(start + (sweep * k) / pieces), centre[1] + radius * Math.sin(start + (sweep * k) / pieces)];
    return Array.from({ length: pieces }, (_, k) => ({ ...like, from: at(k), to: at(k + 1), bulge: Math.tan(sweep / pieces / 4) }));
  },
});

/** Joins stretches that lie over one another; those that only meet stay as they were drawn. */
const joined = ({ stretches, draw, round }: Carrier): Cleaned => {
  const sorted = [...stretches].sort((a, b) => a.low - b.low || b.high - a.high);
  const runs: { low: number; high: number; of: Stretch[] }[] = [];
  let length = 0;
  for (const it of sorted) {
    const last = runs[runs.length - 1];
    const common = last === undefined ? 0 : Math.min(last.high, it.high) - it.low;
    if (last === undefined || common <= MEETS) {
      runs.push({ low: it.low, high: it.high, of: [it] });
      continue;
    }
    length += common;
    last.of.push(it);
    last.high = Math.max(last.high, it.high);
  }
  // a circle's last run may reach over the first ones, once round
  for (let last = runs[runs.length - 1]!; round !== undefined && runs.length > 1 && last.high - round - runs[0]!.low > MEETS; ) {
    const [first] = runs.splice(0, 1);
    length += Math.min(first!.high, last.high - round) - first!.low;
    last.of.push(...first!.of);
    last.high = Math.max(last.high, first!.high + round);
  }
  const curves = runs.flatMap(({ low, high, of }) => {
    if (of.length === 1) return [of[0]!.curve];
    const whole = of.find((it) => it.low - low < SAME_LINE && high - it.high < SAME_LINE);
    if (whole !== undefined) return [whole.curve];
    return draw(low, round === undefined ? high : Math.min(high, low + round), of[0]!.curve);
  });
  return { curves, removed: runs.reduce((sum, { of }) => sum + of.length - 1, 0), length };
};

/**
 * Straight lines and arcs (mm) that lie over one another joined to one: a line drawn twice, a piece of it drawn again, an arc on a
 * circle. Curves that only touch are left alone.
 */
export const withoutOverlaps = (curves: readonly Curve[]): Cleaned => {
  const find = carriers();
  const all: Carrier[] = [];
  // numbers about the middle of the drawing: far from the origin a direction's rounding would move lines apart
  const middle: Vec2 = curves.length === 0 ? [0, 0] : curves[0]!.from;
  const scraps: Curve[] = [];
  const moved = (curve: Curve, by: 1 | -1): Curve => ({
    ...curve,
    from: [curve.from[0] + by * middle[0], curve.from[1] + by * middle[1]],
    to: [curve.to[0] + by * middle[0], curve.to[1] + by * middle[1]],
  });
  for (const drawn of curves) {
    const curve = moved(drawn, -1);
    if (length2(sub2(curve.to, curve.from)) < SAME_LINE) {
      scraps.push(curve);
      continue;
    }
    if (curve.bulge === 0) {
      let way = unit2(sub2(curve.to, curve.from));
      if (way[1] < -SAME_WAY || (Math.abs(way[1]) <= SAME_WAY && way[0] < 0)) way = [-way[0], -way[1]];
      const off = dot2(curve.from, left2(way));
      const carrier = find([Math.atan2(way[1], way[0]), off], [SAME_WAY, SAME_LINE], () => {
        const made = straight(way, off);
        all.push(made);
        return made;
      });
      const ends = [dot2(curve.from, way), dot2(curve.to, way)] as const;
      carrier.stretches.push({ curve, low: Math.min(...ends), high: Math.max(...ends) });
      continue;
    }
    const { centre, radius } = arcOf(curve.from, curve.to, curve.bulge);
    const carrier = find([radius, ...centre], [SAME_LINE, SAME_LINE, SAME_LINE], () => {
      const made = circular(centre, radius);
      all.push(made);
      return made;
    });
    const start = curve.bulge > 0 ? curve.from : curve.to;
    const low = ((Math.atan2(start[1] - centre[1], start[0] - centre[0]) + 2 * Math.PI) % (2 * Math.PI)) * radius;
    carrier.stretches.push({ curve, low, high: low + 4 * Math.atan(Math.abs(curve.bulge)) * radius });
  }
  const cleaned = all.map(joined);
  return {
    curves: [...scraps, ...cleaned.flatMap((it) => it.curves)].map((curve) => moved(curve, 1)),
    removed: cleaned.reduce((sum, it) => sum + it.removed, 0),
    length: cleaned.reduce((sum, it) => sum + it.length, 0),
  };
};

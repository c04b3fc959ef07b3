import { type Interval, union, windowAbout } from '../geometry/index.js';
import { type Punch, type Segment, mirrorProfile, toolSlabs } from '../shop/index.js';
import { type Body, bodiesOf } from './body.js';

/** Ear segments of one sort that a punch has for both ends. mm */
export interface Ears {
  readonly reach: number;
  readonly footHeight: number;
  /** How much lower and further in they hang while nothing bears on them; 0 for rigid ones. */
  readonly slides: number;
  /** The segments, by the end at which they stand, seen by the operator. */
  readonly left: readonly Segment[];
  readonly right: readonly Segment[];
  /** The foot's section in (back, up) from the tip. */
  readonly feet: readonly Body[];
}

/** The sorts of ears that a punch has for both ends, as they stand in this facing: turned about, its left hand is its right. */
export const earsOf = (punch: Punch, facing: 'as drawn' | 'reversed'): readonly Ears[] => {
  const sorts = new Map<string, Segment[]>();
  for (const s of punch.segments) {
    if (!s.ear) continue;
    const key = `${s.ear.reach}|${s.ear.footHeight}|${s.ear.slides ?? 0}`;
    sorts.set(key, [...(sorts.get(key) ?? []), s]);
  }
  return [...sorts.values()].flatMap((segments): Ears[] => {
    const [left, right] = (facing === 'as drawn' ? (['left', 'right'] as const) : (['right', 'left'] as const))
      .map((hand) => segments.filter((s) => s.ear!.hand === hand).sort((a, b) => a.length - b.length));
    if (left!.length === 0 || right!.length === 0) return [];
    const { reach, footHeight, slides = 0 } = segments[0]!.ear!;
    const first = segments[0]!;
    const foot = toolSlabs(punch, first)[first.ear!.hand === 'left' ? 0 : 1]!.profile;
    return [{ reach, footHeight, slides, left: left!, right: right!, feet: bodiesOf(facing === 'reversed' ? mirrorProfile(foot) : foot) }];
  });
};

/**
 * Where along the bed parts of a station's tools may not stand: `whole` is the length out to the ears' ends (die and
 * feet), `drawn` the feet while they hang, `body` the full section between the ears. Without ears all is `whole`.
 */
export interface Rows {
  readonly whole: readonly Interval[];
  readonly drawn: readonly Interval[];
  readonly body: readonly Interval[];
}

export const joinRows = (all: readonly Rows[]): Rows => ({
  whole: all.flatMap((r) => r.whole), drawn: all.flatMap((r) => r.drawn), body: all.flatMap((r) => r.body),
});

/** The least that a left and a right segment make up. mm */
export const shortestOf = ({ left, right }: Ears): number => left[0]!.length + right[0]!.length;

/** How far a row ends inside the station's ends. mm */
export const insetOf = (row: keyof Rows, ears: Ears | null): number =>
  ears === null || row === 'whole' ? 0 : row === 'drawn' ? ears.slides : ears.reach;

/**
 * The window within which the station's whole length must lie so that every row of it stands clear; null where one cannot
 * while all of `need` is covered.
 */
export const stationWindow = (rows: Rows, need: Interval, ears: Ears | null): Interval | null => {
  let [low, high] = [-Infinity, Infinity];
  for (const row of ['whole', 'drawn', 'body'] as const) {
    const inset = insetOf(row, ears);
    const covered: Interval = [need[0] + inset, need[1] - inset];
    if (covered[0] > covered[1]) return null;
    const window = windowAbout(union(rows[row]), covered);
    if (!window) return null;
    low = Math.max(low, window[0] - inset);
    high = Math.min(high, window[1] + inset);
  }
  return [low, high];
};

import { type Interval, type Vec3, apply, turn } from '../geometry/index.js';
import type { Feature } from '../sheet/index.js';
import type { Axis, FingerFace, Machine } from '../shop/index.js';
import { foldTargets } from './foldTargets.js';
import { keptWithBranch } from './keptWithBranch.js';
import { LEAST_STOP_EDGE } from './limits.js';
import type { Setting } from './setting.js';
import { startOf, wingsAt } from './stroke.js';
import type { View } from './views.js';

/** Something on the gauge side that a finger can touch with the sheet flat: (back, up) from the die top, along from the bend's origin. */
export interface Target {
  readonly kind: 'edge' | 'flange';
  readonly feature: Feature;
  readonly view: View;
  readonly back: number;
  readonly low: number;
  readonly high: number;
  readonly along: Interval;
  /** How far an edge runs back for each mm along the bed; `back` is at its left end. */
  readonly taper?: number;
  /** Id of the hem whose fold it is. */
  readonly fold?: string;
}

/** An edge is square to the bed's length, or a flange to the back, within this sine. */
const SQUARE = 1e-3;
/** Does a unit vector lie along an axis (0 to 2)? Asked of what stands across it: a cosine hardly tells a degree or two. */
const along = (v: Vec3, axis: 0 | 1 | 2): boolean => Math.hypot(...v.filter((_, k) => k !== axis)) < SQUARE;
/** The steepest taper that fingers are set to: on a steeper one the sheet slips sideways. Common practice, no source. */
const MOST_TAPER = 0.25;
/** Share of the sheet's thickness that the finger's lower edge stands above its lower face, clear of the die top. */
const ABOVE_LOWER_FACE = 0.2;
/** All that fingers can touch square to the bed. */
export const targets = (setting: Setting): readonly Target[] => {
  const { bend, sheet } = setting;
  const t = bend.thickness;
  const folds = foldTargets(setting).map(({ view, line, fold, ...nose }): Target => ({ kind: 'edge', feature: { kind: 'corner', plate: view.plate, bend: sheet.part.bends.findIndex((b) => b.id === fold) }, view, fold, back: nose.back, low: nose.up - t / 2, high: nose.up + t / 2, along: line }));
  if (bend.kind === 'hem close') return folds;
  return [...folds, ...setting.branches.flatMap((branch) => targetsKept(branch, '', () => branch.views.filter((v) => v.onGaugeSide).flatMap((v) => targetsOf(setting, v))))];
};

const targetsKept = keptWithBranch<readonly Target[]>();

const taperedKept = keptWithBranch<readonly Target[]>();

/** The level edges that face the gauge at a slant, for fingers that stand on X axes of their own. */
export const taperedTargets = (setting: Setting): readonly Target[] => (setting.bend.kind === 'hem close' ? [] :
  setting.branches.flatMap((branch) => taperedKept(branch, '', () => branch.views.filter((v) => v.onGaugeSide && along(turn(v.pose, [0, 0, 1]), 2)).flatMap((v) => edgesOf(setting, v, (taper) => Math.abs(taper) >= SQUARE && Math.abs(taper) <= MOST_TAPER)))));

/** The upright face of a plate, or its edges when it lies level, where they face the gauge. */
const targetsOf = (setting: Setting, view: View): readonly Target[] => {
  const { bend, sheet } = setting;
  const t = bend.thickness;
  const flat = wingsAt(bend, startOf(bend)).gauge;
  const { outline } = sheet.part.plates[view.plate]!;
  const normal = turn(view.pose, [0, 0, 1]);
  if (along(normal, 1)) {
    const middle = apply(view.pose, [outline[0]!.x, outline[0]!.y, 0]);
    const corners = outline.map((v) => apply(view.pose, [v.x, v.y, 0]));
    const heights = corners.map((p) => p[2] + t / 2);
    return [{
      kind: 'flange', feature: { kind: 'face', plate: view.plate, side: normal[1] > 0 ? 'A' : 'B' }, view, back: flat.x + middle[1] + t / 2,
      low: Math.min(...heights), high: Math.max(...heights),
      along: [Math.min(...corners.map((p) => p[0])), Math.max(...corners.map((p) => p[0]))],
    }];
  }
  return along(normal, 2) ? edgesOf(setting, view, (taper) => Math.abs(taper) < SQUARE) : [];
};

/** The straight edges of a level plate whose taper (how far they run back for each mm along the bed) is wanted. */
const edgesOf = ({ bend, sheet }: Setting, view: View, wanted: (taper: number) => boolean): readonly Target[] => {
  const t = bend.thickness;
  const flat = wingsAt(bend, startOf(bend)).gauge;
  const { outline } = sheet.part.plates[view.plate]!;
  return outline.flatMap((v, i): Target[] => {
    if (v.bulge !== 0) return [];
    const w = outline[(i + 1) % outline.length]!;
    const size = Math.hypot(w.x - v.x, w.y - v.y);
    if (size < LEAST_STOP_EDGE) return [];
    const outwards: Vec3 = turn(view.pose, [(w.y - v.y) / size, -(w.x - v.x) / size, 0]);
    const taper = -outwards[0] / outwards[1];
    if (outwards[1] <= 0 || !wanted(taper)) return [];
    const [p, q] = [apply(view.pose, [v.x, v.y, 0]), apply(view.pose, [w.x, w.y, 0])];
    const left = p[0] < q[0] ? p : q;
    const up = p[2] + t / 2;
    return [{ kind: 'edge', feature: { kind: 'edge', plate: view.plate, at: [(v.x + w.x) / 2, (v.y + w.y) / 2] }, view, back: flat.x + left[1], low: up - t / 2, high: up + t / 2, along: [Math.min(p[0], q[0]), Math.max(p[0], q[0])], ...(Math.abs(taper) < SQUARE ? {} : { taper }) }];
  });
};

/** From where to where an axis goes. mm */
export const span = (axis: Axis): Interval => (axis.drive === 'fixed' ? [axis.at, axis.at] : [axis.min, axis.max]);

/** mm of Z that are left over by two fingers as far apart as they go, so that a station need not stand to the millimetre. Common practice, no source. */
const Z_LEFT = 40;

/** How far apart two fingers may stand: a part longer than the gauge's Z is held by two of its places, not by its ends. mm */
export const mostApart = (gauge: Machine['gauge']): number => {
  const [least, most] = span(gauge.z);
  return Math.max(Math.min(gauge.apart, most - least), most - least - Z_LEFT);
};

/** Reference heights (from the die seat) at which a face meets the target's height; empty when it cannot. */
export const heights = (target: Target, face: FingerFace, setting: Setting): readonly number[] => {
  const { machine, pair, bend } = setting;
  const [least, most] = span(machine.gauge.r);
  const held = Math.min(bend.thickness, target.high - target.low) / 2;
  // overlap of face and target, both from the die top
  const overlap = (r: number): number => Math.min(target.high, r - pair.dieTop + face.to) - Math.max(target.low, r - pair.dieTop + face.from);
  const low = Math.max(target.low, target.kind === 'edge' ? -Infinity : 0) + ABOVE_LOWER_FACE * bend.thickness;
  const wished = [low - face.from, target.high - face.to - ABOVE_LOWER_FACE * bend.thickness].map((up) => up + pair.dieTop);
  const candidates = least === most ? [least] : wished.map((r) => Math.min(most, Math.max(least, r)));
  return [...new Set(candidates)].filter((r) => overlap(r) >= held).slice(0, 1);
};


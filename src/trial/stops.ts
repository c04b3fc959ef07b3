import { type Interval, type Vec2, type Vec3, apply, turn, union } from '../geometry/index.js';
import type { Feature } from '../sheet/index.js';
import type { Axis, FingerFace } from '../shop/index.js';
import type { Asker } from './asker.js';
import type { Body } from './body.js';
import type { Conflict } from './conflict.js';
import { foldTargets } from './foldTargets.js';
import { clearAtStop, clearMovedBack, gaugeBodies } from './gaugeClearance.js';
import { keptWithBranch } from './keptWithBranch.js';
import { BASE_ALLOWANCE, LEAST_STOP_EDGE, ON_DIE_TOP } from './limits.js';
import type { Setting } from './setting.js';
import type { ToolClearance } from './toolClearance.js';
import { startOf, wingsAt } from './stroke.js';
import type { Branch, View } from './views.js';
import { once } from './once.js';
import { outOfReach } from './outOfReach.js';
import { type Passes, passesFor, passesIn, passesOut, passesStroke, seenFrom } from './ways.js';

/** Something on the gauge side that a finger can touch with the sheet flat: (back, up) from the die top, along from the bend's origin. */
interface Target {
  readonly kind: 'edge' | 'flange';
  readonly feature: Feature;
  readonly view: View;
  readonly back: number;
  readonly low: number;
  readonly high: number;
  readonly along: Interval;
  /** Id of the hem whose fold it is. */
  readonly fold?: string;
}

/** A stop that works: `z` along from the bend's own origin, `r` from the die seat. mm */
export interface StopChoice {
  readonly kind: 'edge' | 'flange' | 'none';
  readonly plate: number;
  readonly face: string;
  /** Back of the touching face, and what the X axis is set to for it (the finger's nose). */
  readonly x: number;
  readonly axisX: number;
  readonly r: number;
  readonly z: readonly number[];
  readonly retract: number;
  /** How far the outer fingers stand apart: squareness comes from it. */
  readonly spread: number;
  /** What the fingers touch, null for a scribed line; how high over the sheet's middle plane (the flange's highest contact) and over what length of it one finger bears. mm */
  readonly feature: Feature | null;
  readonly height: number;
  readonly touching: number;
  /** Id of the hem whose fold touches. */
  readonly fold?: string;
  /** No finger and no scribed line: an earlier pass has begun the bend, and it lies in the V by itself. */
  readonly begun?: true;
}

/** An edge is square to the bed's length, or a flange to the back, within this sine. */
const SQUARE = 1e-3;
/** Does a unit vector lie along an axis (0 to 2)? Asked of what stands across it: a cosine hardly tells a degree or two. */
const along = (v: Vec3, axis: 0 | 1 | 2): boolean => Math.hypot(...v.filter((_, k) => k !== axis)) < SQUARE;
/** Share of the sheet's thickness that the finger's lower edge stands above its lower face, clear of the die top. */
const ABOVE_LOWER_FACE = 0.2;
/** Against what it touches the finger is tested one allowance behind where it stands, with that allowance less this. mm */
const TOUCHING = 0.02;
/**
 * A gauge that is set by hand stays where it is in the stroke. The edge's lower corner, one thickness t under the upper one, swings
 * out by t^2 / 2L before it rises, and the flat is drawn into the V: the finger gives so much. mm; common practice, no source.
 */
const GIVES = 0.3;
/** Retracts that are tried; a powered gauge does any of them within the stroke. mm */
const RETRACTS = [0, 5, 10, 20, 40, 80, 150];

/** How stops are ranked, less is better: one finger, a flange, a later face of the finger, mm of width and of distance. Common practice, no source. */
const ONE_FINGER = 1e6;
const FLANGE = 1e3;
const LATER_FACE = 100;
const WIDER = 0.1;
const FURTHER = 0.01;

const targets = (setting: Setting): readonly Target[] => {
  const { bend, sheet } = setting;
  const t = bend.thickness;
  const folds = foldTargets(setting).map(({ view, line, fold, ...nose }): Target => ({ kind: 'edge', feature: { kind: 'corner', plate: view.plate, bend: sheet.part.bends.findIndex((b) => b.id === fold) }, view, fold, back: nose.back, low: nose.up - t / 2, high: nose.up + t / 2, along: line }));
  if (bend.kind === 'hem close') return folds;
  return [...folds, ...setting.branches.flatMap((branch) => targetsKept(branch, '', () => branch.views.filter((v) => v.onGaugeSide).flatMap((v) => targetsOf(setting, v))))];
};

const targetsKept = keptWithBranch<readonly Target[]>();

/** The upright face of a plate, or its edges when it lies level, where they face the gauge. */
const targetsOf = ({ bend, sheet }: Setting, view: View): readonly Target[] => {
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
  if (!along(normal, 2)) return [];
  return outline.flatMap((v, i): Target[] => {
    if (v.bulge !== 0) return [];
    const w = outline[(i + 1) % outline.length]!;
    const size = Math.hypot(w.x - v.x, w.y - v.y);
    if (size < LEAST_STOP_EDGE) return [];
    const outwards: Vec3 = turn(view.pose, [(w.y - v.y) / size, -(w.x - v.x) / size, 0]);
    if (outwards[1] < 0 || !along(outwards, 1)) return [];
    const [p, q] = [apply(view.pose, [v.x, v.y, 0]), apply(view.pose, [w.x, w.y, 0])];
    const up = p[2] + t / 2;
    return [{ kind: 'edge', feature: { kind: 'edge', plate: view.plate, at: [(v.x + w.x) / 2, (v.y + w.y) / 2] }, view, back: flat.x + p[1], low: up - t / 2, high: up + t / 2, along: [Math.min(p[0], q[0]), Math.max(p[0], q[0])] }];
  });
};

const span = (axis: Axis): Interval => (axis.drive === 'fixed' ? [axis.at, axis.at] : [axis.min, axis.max]);

/** Reference heights (from the die seat) at which a face meets the target's height; empty when it cannot. */
const heights = (target: Target, face: FingerFace, setting: Setting): readonly number[] => {
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

/** Places for the fingers' middles on a target, as far apart as they go; null when none is free. */
const fingerPlaces = (target: Target, forbidden: readonly Interval[], width: number, apart: number): readonly number[] | null => {
  const [a, b] = target.along;
  const full = b - a >= width;
  const range: Interval = full ? [a + width / 2, b - width / 2] : [(a + b) / 2, (a + b) / 2];
  const taken = union(forbidden.map(([p, q]) => [p - width / 2, q + width / 2] as const));
  const isFree = (z: number): boolean => !taken.some(([p, q]) => z > p && z < q);
  const spots = [range[0], range[1], ...taken.flatMap(([p, q]) => [p, q])].filter((z) => z >= range[0] && z <= range[1] && isFree(z));
  if (spots.length === 0) return null;
  const [left, right] = [Math.min(...spots), Math.max(...spots)];
  return right - left >= apart ? [left, right] : [(isFree((left + right) / 2) ? (left + right) / 2 : left)];
};

/** Is the sheet placed by eye? */
export const isScribed = ({ kind, begun }: StopChoice): boolean => kind === 'none' && !begun;

/** Do two stops touch the sheet at the same edge or face? */
export const sameFeature = (one: Feature | null, other: Feature | null): boolean => JSON.stringify(one) === JSON.stringify(other);

/** What fingers at a place meet: where along the bed, and whether the bar that carries them is met. */
interface Struck {
  readonly where: readonly Interval[];
  readonly beam: boolean;
}

const struckKept = keptWithBranch<Struck>();

/**
 * The best stop for a stroke: two fingers before one, an edge before a flange, the wider stance before the narrower. `without` leaves
 * edges and faces out. Null, with what stands in the way, when no finger reaches.
 */
export const chooseStop = (asker: Asker, setting: Setting, ways: Pick<ToolClearance, 'wayIn' | 'wayOut'>, without: readonly Feature[] = []):
  { readonly stop: StopChoice } | { readonly stop: null; readonly conflict: Conflict } => {
  const { machine, pair, bend } = setting;
  const { gauge } = machine;
  const [xLeast, xMost] = span(gauge.x);
  const found = targets(setting).filter((t) => !without.some((f) => sameFeature(f, t.feature)));
  let nearest = -Infinity;
  const { finger, beam } = gaugeBodies(gauge);
  const strikes = (target: Target, x: number, r: number, kind: 'arriving' | 'bending', movedBack: boolean): Struck => {
    const way = kind === 'arriving' ? ways.wayIn : ways.wayOut;
    const placeKey = `${x.toFixed(3)}|${r.toFixed(3)}|${kind}|${way.by}|${way.by === 'side' ? 0 : way.lift}`;
    /** Asks with the fingers at `x`, or, for what touches them, one allowance behind it. */
    const asking = (touches: boolean): ((view: View, name: string, bodies: readonly Body[]) => readonly Interval[]) => {
      const place: Vec2 = [touches ? x + BASE_ALLOWANCE : x, r - pair.dieTop];
      const slack = kind === 'bending' && gauge.x.drive !== 'powered' ? GIVES : TOUCHING;
      const allowance = touches ? BASE_ALLOWANCE - slack : BASE_ALLOWANCE;
      const key = `${pair.dieKey}|${placeKey}${touches ? '|touching' : ''}`;
      const walk = once((): Passes => {
        if (kind === 'arriving') return seenFrom(passesIn(bend, ways.wayIn, 0), place);
        const stroke = passesStroke(bend, false);
        const out = passesOut(bend, ways.wayOut, 0);
        return seenFrom({ gauge: [...stroke.gauge, ...out.gauge], front: [...stroke.front, ...out.front] }, place);
      });
      return (view, name, bodies) =>
        outOfReach(view, passesFor(view, walk()), bodies, allowance) ? [] : asker.ask(view, `${key}|${name}`, bodies, walk, { allowance }).where;
    };
    const [touching, plain] = [asking(true), asking(false)];
    const flatEdge = target.kind === 'edge' && target.low <= ON_DIE_TOP;
    const ofBranch = (branch: Branch): Struck => {
      const where: Interval[] = [];
      let hitsBeam = false;
      for (const view of branch.views) {
        // the stop's own plate and what lies flat with it touch the fingers while these stand there; everything else keeps clear of them
        const touches = !movedBack && (view === target.view || (flatEdge && view.pieces.every((p) => p.flat)));
        const meets = touches ? touching : plain;
        // a finger's sides keep the allowance too
        where.push(...meets(view, 'finger', finger).map(([a, b]): Interval => [a - BASE_ALLOWANCE, b + BASE_ALLOWANCE]));
        if (!hitsBeam && meets(view, 'gauge beam', beam).length > 0) hitsBeam = true;
      }
      return { where, beam: hitsBeam };
    };
    const touched = movedBack ? '' : `|${flatEdge ? 'flat' : ''}`;
    const key = `${pair.dieKey}|${placeKey}${touched}`;
    const all = setting.branches.map((branch) => struckKept(branch, touched && branch.views.includes(target.view) ? `${key}|${target.view.plate}` : key, () => ofBranch(branch)));
    return { where: all.flatMap((s) => s.where), beam: all.some((s) => s.beam) };
  };
  // what a stop could be at best, from the target alone: they are tried in that order, and the first that nothing left can beat is it
  const tries = found.flatMap((target) => gauge.finger.faces.flatMap((face, f) => {
    const x = target.back - face.behind;
    nearest = Math.max(nearest, x);
    if (x < xLeast || x > xMost) return [];
    const width = Math.max(0, target.along[1] - target.along[0] - gauge.finger.width);
    const plain = (target.kind === 'edge' ? 0 : FLANGE) + f * LATER_FACE + target.back * FURTHER;
    return [{ target, face, x, plain, least: plain + (width >= gauge.apart ? -width * WIDER : ONE_FINGER) }];
  })).sort((a, b) => a.least - b.least);
  let best: StopChoice | null = null;
  let bestRank = Infinity;
  for (const { target, face, x, plain, least } of tries) {
    if (least >= bestRank) break;
    for (const r of heights(target, face, setting)) {
      if (!clearAtStop(setting, x, r, ways.wayIn.opening)) continue;
      const arriving = strikes(target, x, r, 'arriving', false);
      if (arriving.beam) continue;
      const places = fingerPlaces(target, arriving.where, gauge.finger.width, gauge.apart);
      if (!places) continue;
      const mayRetract = gauge.x.drive === 'powered';
      const retract = RETRACTS.find((by) => {
        if (by > 0 && (!mayRetract || x + by > xMost)) return false;
        if (!clearMovedBack(setting, x + by, r, ways.wayOut.opening)) return false;
        const later = strikes(target, x + by, r, 'bending', by > 0);
        return !later.beam && places.every((z) => !later.where.some(([p, q]) => z + gauge.finger.width / 2 > p && z - gauge.finger.width / 2 < q));
      });
      if (retract === undefined) continue;
      const spread = places.length > 1 ? places[1]! - places[0]! : 0;
      const rank = plain + (places.length > 1 ? -spread * WIDER : ONE_FINGER);
      if (rank >= bestRank) continue;
      bestRank = rank;
      best = { kind: target.kind, plate: target.view.plate, face: face.name, x: target.back, axisX: x, r, z: places, retract, spread, ...(target.fold === undefined ? {} : { fold: target.fold }),
        feature: target.feature, height: target.kind === 'edge' ? 0 : Math.min(target.high, r - pair.dieTop + face.to) - bend.thickness / 2,
        touching: Math.min(gauge.finger.width, target.along[1] - target.along[0]),
      };
    }
  }
  if (best) return { stop: best };
  const note = found.length === 0 ? 'nothing on the gauge side is parallel to the bend'
    : nearest < xLeast ? `its furthest edge lies ${nearest.toFixed(1)} mm behind the bend and the gauge begins at ${xLeast.toFixed(1)} mm`
      : nearest > xMost ? `the edge lies ${nearest.toFixed(1)} mm behind the bend and the gauge ends at ${xMost.toFixed(1)} mm`
        : 'the fingers find no free place at its height';
  return { stop: null, conflict: { code: 'no stop', body: 'finger', phase: 'stop', by: 0, view: null, note } };
};

import { type Interval, union } from '../geometry/index.js';
import type { Feature } from '../sheet/index.js';
import type { Asker } from './asker.js';
import type { Conflict } from './conflict.js';
import { fingerStrikes } from './fingerStrikes.js';
import { clearAtStop, clearMovedBack } from './gaugeClearance.js';
import type { Setting } from './setting.js';
import { RETRACTS, type StopChoice, sameFeature } from './stopChoice.js';
import { type Target, heights, mostApart, span, targets } from './stopTargets.js';
import { taperedStop } from './taperedStop.js';
import type { ToolClearance } from './toolClearance.js';

/** How stops are ranked, less is better: one finger, a flange, a later face of the finger, mm of width and of distance. Common practice, no source. */
const ONE_FINGER = 1e6;
const FLANGE = 1e3;
const LATER_FACE = 100;
const WIDER = 0.1;
const FURTHER = 0.01;
/** mm: rounding. */
const ROUND = 1e-6;

/** The two places furthest apart, but no further than `most`: as nearly about the middle as may be. */
const within = (spots: readonly number[], isFree: (z: number) => boolean, [from, to]: Interval, most: number): Interval | null => {
  const middle = (from + to) / 2;
  const all = [...spots, ...[middle - most / 2, ...spots.flatMap((z) => [z - most, z + most]), middle + most / 2].filter((z) => z >= from && z <= to && isFree(z))];
  let best: Interval | null = null;
  const off = ([a, b]: Interval): number => Math.abs((a + b) / 2 - middle);
  for (const a of all) {
    for (const b of all) {
      const pair: Interval = [a, b];
      if (b <= a || b - a > most + ROUND) continue;
      if (!best || b - a > best[1] - best[0] + ROUND || (b - a > best[1] - best[0] - ROUND && off(pair) < off(best))) best = pair;
    }
  }
  return best;
};

/** Places for the fingers' middles on a target, as far apart as they go up to `most`; null when none is free. */
const fingerPlaces = (target: Target, forbidden: readonly Interval[], width: number, apart: number, most: number): readonly number[] | null => {
  const [a, b] = target.along;
  const full = b - a >= width;
  const range: Interval = full ? [a + width / 2, b - width / 2] : [(a + b) / 2, (a + b) / 2];
  const taken = union(forbidden.map(([p, q]) => [p - width / 2, q + width / 2] as const));
  const isFree = (z: number): boolean => !taken.some(([p, q]) => z > p && z < q);
  const spots = [range[0], range[1], ...taken.flatMap(([p, q]) => [p, q])].filter((z) => z >= range[0] && z <= range[1] && isFree(z));
  if (spots.length === 0) return null;
  const [left, right] = [Math.min(...spots), Math.max(...spots)];
  const pair = right - left <= most ? [left, right] as const : within(spots, isFree, range, most);
  return pair && pair[1] - pair[0] >= apart ? pair : [(isFree((left + right) / 2) ? (left + right) / 2 : left)];
};

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
  const strikes = fingerStrikes(asker, setting, ways);
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
      const places = fingerPlaces(target, arriving.where, gauge.finger.width, gauge.apart, mostApart(gauge));
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
  const tapered = gauge.ownX ? taperedStop(setting, ways, strikes, without) : null;
  if (tapered) return { stop: tapered };
  const note = found.length === 0 ? 'nothing on the gauge side is parallel to the bend'
    : nearest < xLeast ? `its furthest edge lies ${nearest.toFixed(1)} mm behind the bend and the gauge begins at ${xLeast.toFixed(1)} mm`
      : nearest > xMost ? `the edge lies ${nearest.toFixed(1)} mm behind the bend and the gauge ends at ${xMost.toFixed(1)} mm`
        : 'the fingers find no free place at its height';
  return { stop: null, conflict: { code: 'no stop', body: 'finger', phase: 'stop', by: 0, view: null, note } };
};

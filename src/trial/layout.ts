import type { Interval } from '../geometry/index.js';
import { type Machine, type Rack, punchPenetration } from '../shop/index.js';
import { resultantOf } from './bentPieces.js';
import type { Pair } from './bodies.js';
import type { Conflict } from './conflict.js';
import { type EndPieces, type EarStock, endPieces, freshEars, withoutEnds } from './earStock.js';
import { type StationHeight, correctedHeights, heightFault } from './heights.js';
import { BASE_ALLOWANCE, BETWEEN_STATIONS } from './limits.js';
import { riserStock } from './riserStock.js';
import type { Planned, Stood } from './task.js';
import type { Settle } from './seatShift.js';
import { type Stock, compose, lengthFor, plainStock, without } from './segments.js';
import type { Placed, Station } from './trial.js';
import { reachesFrames } from './toolClearance.js';
import { tipAt } from './stroke.js';
import { span } from './stopTargets.js';

/** Where a step is bent: its station, and where the bend's own origin lies along the bed. */
export interface Placement {
  readonly station: number;
  readonly origin: number;
}

export interface Layout {
  readonly stations: readonly Station[];
  readonly placements: readonly Placement[];
  /** The plan that stands on it: dies may have been raised. */
  readonly plan: readonly Planned[];
}

/** How many stations a layout has, and how often its plan goes from one to another. */
export const stoodOn = ({ stations, placements }: Layout): Stood =>
  ({ stations: stations.length, walks: placements.filter(({ station }, i) => i > 0 && station !== placements[i - 1]!.station).length });

export type LayoutAnswer = { readonly ok: true; readonly layout: Layout } | { readonly ok: false; readonly conflict: Conflict };

/** A pair with the segments that make it up. */
export interface Equipped {
  readonly pair: Pair;
  readonly punchParts: readonly number[];
  /** Ear segments at the punch's ends; null where both are plain. */
  readonly ends: EndPieces | null;
  readonly dieParts: readonly number[];
}

interface Draft extends Equipped {
  readonly steps: readonly number[];
  readonly length: number;
  /** For each of `steps`, where the tool begins, from the bend's origin. */
  readonly starts: readonly number[];
  /** mm of sheet that stand out over the tools' ends, left and right. */
  readonly over: readonly [number, number];
  /** Does a part leave sideways here? Then one side must be open. */
  readonly sideways: boolean;
}

const trouble = (code: Conflict['code'], note: string, by = 0): LayoutAnswer => ({
  ok: false, conflict: { code, body: 'bed', phase: 'set-up', by, view: null, note },
});

const width = ([a, b]: Interval): number => b - a;

/** Steps of one pair gathered so that each gathering has a tool length for all of it (stabbing: fewest stations). */
const gatherings = (plan: readonly Planned[], steps: readonly number[]): number[][] => {
  const room = (i: number): number => width(plan[i]!.option.tools.window);
  const least = (i: number): number => width(plan[i]!.option.need);
  const left = [...steps].sort((a, b) => room(a) - room(b));
  const out: number[][] = [];
  while (left.length > 0) {
    const most = room(left[0]!);
    const together = left.filter((i) => least(i) <= most);
    out.push(together);
    for (const i of together) left.splice(left.indexOf(i), 1);
  }
  return out;
};

/** Where a tool of `length` begins for one step: over the middle of the bend as far as the window lets it. */
const startOf = (step: Planned, length: number): number => {
  const { line, tools: { window: [low, high] } } = step.option;
  const middle = (line[0] + line[1]) / 2 - length / 2;
  return Math.min(high - length, Math.max(low, middle));
};

const draftOf = (plan: readonly Planned[], pair: Pair, steps: readonly number[], punchStock: Stock, dieStock: Stock, ears: EarStock): Draft | null => {
  const options = steps.map((i) => plan[i]!.option);
  const least = Math.max(...options.map((o) => width(o.need)));
  const most = Math.min(pair.punch.segments.reduce((s, g) => s + g.length * g.count, 0), ...options.map((o) => width(o.tools.window)));
  const wished = Math.max(...options.map((o) => width(o.line)));
  const choices = pair.ears ? endPieces(pair.ears, ears) : [null];
  let ends: EndPieces | null = null;
  let length: number | null = null;
  for (ends of choices) {
    length = lengthFor(punchStock, dieStock, least, most, wished, ends ? ends.left + ends.right : 0);
    if (length !== null) break;
  }
  if (length === null) return null;
  const starts = steps.map((i) => startOf(plan[i]!, length));
  const over: [number, number] = [0, 0];
  options.forEach((o, k) => {
    for (const [a, b] of o.setting.views.flatMap((v) => v.pieces.map((p) => p.along))) {
      over[0] = Math.max(over[0], starts[k]! - a);
      over[1] = Math.max(over[1], b - (starts[k]! + length));
    }
  });
  return {
    pair, steps, length, starts, over,
    ends, punchParts: compose(punchStock, length - (ends ? ends.left + ends.right : 0))!, dieParts: compose(dieStock, length)!,
    sideways: options.some((o) => o.tools.wayIn.by === 'side' || o.tools.wayOut.by === 'side'),
  };
};

const standing = (parts: readonly number[], from: number): Placed[] => {
  let at = from;
  return parts.map((length) => {
    const placed = { length, from: at };
    at += length;
    return placed;
  });
};

const standingPunch = ({ punchParts, ends }: Equipped, from: number): Placed[] => {
  if (!ends) return standing(punchParts, from);
  const plain = standing(punchParts, from + ends.left);
  const end = from + ends.left + punchParts.reduce((sum, p) => sum + p, 0);
  return [{ length: ends.left, from, ear: 'left' }, ...plain, { length: ends.right, from: end, ear: 'right' }];
};

/** How far a station's tip may enter its die with no sheet, remembered: it is asked for every plan. */
const emptyLimits = new WeakMap<Pair, number>();
export const emptyLimitOf = (pair: Pair): number => {
  const known = emptyLimits.get(pair) ?? punchPenetration(pair.punch, pair.die, BASE_ALLOWANCE, pair.punchFacing, pair.dieFacing);
  emptyLimits.set(pair, known);
  return known;
};

/** A station with its left end at `from` along the bed. */
export const stationOf = (id: string, equipped: Equipped, from: number): Station => {
  const { pair } = equipped;
  return {
    id, punch: pair.punch.id, die: pair.die.id, punchFacing: pair.punchFacing, dieFacing: pair.dieFacing,
    punchSegments: standingPunch(equipped, from), dieSegments: standing(equipped.dieParts, from),
    riser: pair.dieTop - pair.die.height, dieTop: pair.dieTop, stackHeight: pair.dieTop + pair.punch.height, emptyLimit: emptyLimitOf(pair),
  };
};

/** Where each step's bend has its origin with the row at 0, and the station that it is bent on. mm */
const originsOf = (plan: readonly Planned[], row: readonly Draft[], froms: readonly number[]): readonly Placement[] => plan.map((_, i) => {
  const station = row.findIndex((d) => d.steps.includes(i));
  return { station, origin: froms[station]! - row[station]!.starts[row[station]!.steps.indexOf(i)]! };
});

/** The steps' bend lines along the bed with the row at 0, and how far it may go with deep sheets between the side frames. mm */
const settling = (plan: readonly Planned[], origins: readonly number[], machine: Machine, [least, most]: Interval): readonly [readonly Interval[], number, number] => {
  const windows = plan.map(({ option: { line } }, i): Interval => [line[0] + origins[i]!, line[1] + origins[i]!]);
  let [low, high] = [least, most];
  plan.forEach(({ option: { setting } }, i) => {
    if (!reachesFrames(setting)) return;
    const alongs = setting.views.flatMap((v) => v.pieces.flatMap((p) => p.along)).map((a) => a + origins[i]!);
    low = Math.max(low, Math.ceil(-machine.betweenFrames / 2 - Math.min(...alongs)));
    high = Math.min(high, Math.floor(machine.betweenFrames / 2 - Math.max(...alongs)));
  });
  return [windows, low, high];
};

/** The punch shoulder seat's lowest place of one step, up from the die seat. mm */
export const lowestSeat = (step: Planned): number => {
  const { bend, pair } = step.option.setting;
  return pair.dieTop + tipAt(bend, bend.bendAngleUnderLoad) + pair.punch.height;
};

/**
 * All stations of a plan along one bed under one ram, or why they cannot stand there. Where heights do not suit each other,
 * risers from the rack are laid under dies and `raised` is asked for each step with its die so much higher. `settle` may move the row.
 */
export const layoutOf = (
  plan: readonly Planned[], machine: Machine, rack: Rack, raised: ((step: Planned, riser: number) => Planned | null) | null,
  force: (step: Planned) => number, settle?: Settle,
): LayoutAnswer => {
  const drafts: Draft[] = [];
  const stocks = new Map<string, Stock>();
  const earStocks = new Map<string, EarStock>();
  const stockOf = (id: string, fresh: () => Stock): Stock => stocks.get(id) ?? fresh();
  const pairs = [...new Set(plan.map((p) => p.option.setting.pair))];
  for (const pair of pairs) {
    const steps = plan.flatMap((p, i) => (p.option.setting.pair === pair ? [i] : []));
    for (const together of gatherings(plan, steps)) {
      const punchStock = stockOf(pair.punch.id, () => plainStock(pair.punch.segments));
      const dieStock = stockOf(pair.die.id, () => plainStock(pair.die.segments));
      const ears = earStocks.get(pair.punch.id) ?? freshEars(pair.punch.segments);
      const draft = draftOf(plan, pair, together, punchStock, dieStock, ears);
      if (!draft) {
        const o = plan[together[0]!]!.option;
        return trouble('no segments', `no segments of ${pair.punch.name} and ${pair.die.name} make up a length between ${Math.max(...together.map((i) => width(plan[i]!.option.need))).toFixed(0)} and ${width(o.tools.window).toFixed(0)} mm`);
      }
      stocks.set(pair.punch.id, without(punchStock, draft.punchParts));
      if (draft.ends) earStocks.set(pair.punch.id, withoutEnds(ears, draft.ends));
      stocks.set(pair.die.id, without(dieStock, draft.dieParts));
      drafts.push(draft);
    }
  }
  // parts that leave sideways need an open end: at most one such station at either end of the row
  const open = drafts.filter((d) => d.sideways);
  if (open.length > 2) return trouble('way out', `${open.length} stations need an open end for a part that comes off sideways, and a bed has two`);
  const inner = drafts.filter((d) => !d.sideways).sort((a, b) => b.length - a.length);
  const row = [...open.slice(0, 1), ...inner, ...open.slice(1)];
  let at = 0;
  const froms = row.map((draft, i) => {
    if (i > 0) at += Math.max(row[i - 1]!.over[1], draft.over[0], 0) + BETWEEN_STATIONS;
    const from = at;
    at += draft.length;
    return from;
  });
  const total = at;
  if (total > machine.length) {
    return trouble('bed length', `the stations ask ${total.toFixed(0)} mm of bed and it takes ${machine.length.toFixed(0)} mm`, total - machine.length);
  }
  // the station with the most steps stands as near the middle as the bed lets it
  const main = row.reduce((best, d, i) => (d.steps.length > row[best]!.steps.length ? i : best), 0);
  const wished = -(froms[main]! + row[main]!.length / 2);
  const atZero = originsOf(plan, row, froms);
  const origins = atZero.map(({ origin }) => origin);
  // where a step's resultant may lie so that neither cylinder pulls nor bears more than half the rating
  const room = plan.map((step, i): Interval => {
    const { sheet, seat, group } = step.option.setting;
    const at = origins[i]! + resultantOf(sheet.part, seat, group);
    const reach = (machine.cylinders.spacing / 2) * Math.min(1, machine.rating / force(step) - 1);
    return [-reach - at, reach - at];
  });
  const onBed: Interval = [Math.max(-machine.length / 2, ...room.map(([from]) => Math.ceil(from))), Math.min(machine.length / 2 - total, ...room.map(([, to]) => Math.floor(to)))];
  // and where no finger is asked past the ends of its Z
  const [zLeast, zMost] = span(machine.gauge.z);
  const fingers = plan.flatMap((step, i) => step.option.stop.z.map((z) => z + origins[i]!));
  const [least, most] = [Math.max(onBed[0], Math.ceil(zLeast - Math.min(...fingers))), Math.min(onBed[1], Math.floor(zMost - Math.max(...fingers)))];
  if (onBed[0] <= onBed[1] && least > most) {
    return trouble('no stop', `wherever the stations stand on the bed, a finger is asked past the end of its Z, which reaches from ${zLeast.toFixed(0)} to ${zMost.toFixed(0)} mm`, least - most);
  }
  if (least > most) {
    const heaviest = plan.reduce((best, _, i) => (width(room[i]!) < width(room[best]!) ? i : best), 0);
    return trouble('force', `wherever the stations stand, a step loads one of the two cylinders past half the rating of ${(machine.rating / 1000).toFixed(0)} kN or levers the other up; step ${heaviest + 1} asks ${(force(plan[heaviest]!) / 1000).toFixed(0)} kN`, least - most);
  }
  const near = Math.round(Math.min(most, Math.max(least, wished)));
  const shift = settle ? settle(...settling(plan, origins, machine, [least, most]), near) : near;
  const stations = row.map((draft, i): Station => stationOf(`S${i + 1}`, draft, froms[i]! + shift));
  const placements = atZero.map(({ station, origin }): Placement => ({ station, origin: origin + shift }));
  for (const [i, step] of plan.entries()) {
    const { views } = step.option.setting;
    if (!reachesFrames(step.option.setting)) continue;
    const alongs = views.flatMap((v) => v.pieces.flatMap((p) => p.along)).map((a) => a + placements[i]!.origin);
    const out = Math.max(Math.max(...alongs), -Math.min(...alongs)) - machine.betweenFrames / 2;
    if (out > 0) return trouble('between frames', `a sheet deeper than the throat stands ${out.toFixed(0)} mm outside the side frames at step ${i + 1}`, out);
  }
  const heights = row.map((d, i): StationHeight => ({
    id: stations[i]!.id, dieHeight: d.pair.dieTop, punchHeight: d.pair.punch.height, emptyLimit: stations[i]!.emptyLimit,
    lowest: Math.min(...d.steps.map((k) => lowestSeat(plan[k]!))) - d.pair.dieTop,
  }));
  const fault = heightFault(heights, row.map(() => 0), machine.shutHeight);
  if (!fault) return { ok: true, layout: { stations, placements, plan } };
  const stock = riserStock(rack, row.map(({ pair: { die }, length }) => ({ die, length })));
  const risers = raised ? correctedHeights(heights, stock.choices, machine.shutHeight, stock.suffice) : null;
  const higher = risers && plan.map((step, i) => raised!(step, risers[placements[i]!.station]!));
  if (higher?.every((step): step is Planned => step !== null)) return layoutOf(higher as Planned[], machine, rack, null, force, settle);
  return trouble(fault.kind === 'shut' ? 'shut height' : 'one ram', fault.kind === 'shut'
    ? `the stack of station ${fault.working} is ${fault.by.toFixed(1)} mm too low for the ram's lowest place`
    : `at the lowest ram position of station ${fault.working} the punch of station ${fault.struck} goes ${fault.by.toFixed(1)} mm too far into its empty die`, fault.by);
};

/**
 * Can these two pairs stand under one ram at all, with risers from the rack? `lowest` is the shoulder seat's lowest place over
 * each pair's die top. Asked before any order is searched: most pairs of unlike height fall out here.
 */
export const standTogether = (machine: Machine, rack: Rack, pairs: readonly [Pair, Pair], lowest: readonly [number, number]): boolean => {
  const heights = pairs.map((pair, i): StationHeight => ({
    id: pair.key, dieHeight: pair.die.height, punchHeight: pair.punch.height, emptyLimit: emptyLimitOf(pair), lowest: lowest[i]!,
  }));
  // their lengths are not known yet
  return correctedHeights(heights, riserStock(rack, pairs.map(({ die }) => ({ die, length: 0 }))).choices, machine.shutHeight) !== null;
};

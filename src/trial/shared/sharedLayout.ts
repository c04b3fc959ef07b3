import type { Machine, Rack } from '../../shop/index.js';
import type { Replaceable } from '../input.js';
import { BESIDE_SHEET, BETWEEN_STATIONS } from '../limits.js';
import { type Placement, stationOf } from '../layout.js';
import { listed } from '../listed.js';
import type { Planned } from '../task.js';
import type { Trial } from '../trial.js';
import { type Segments, composeAll, lengthFits } from './composeAll.js';
import { type LeastRow, type RowAnswer, leastRow } from './leastRow.js';
import { type Merged, merged } from './merging.js';
import { createTogether, underOneRam } from './oneRam.js';
import type { Bed } from './row.js';
import { type ToolWay, ofUse, toolWays } from './toolWay.js';

/** A part with the plans that may stand on the layout, its own best first. */
export interface SharedPart {
  readonly name: string;
  readonly plans: readonly Replaceable[];
}

export interface SharedAsked {
  readonly machine: Machine;
  readonly rack: Rack;
  readonly parts: readonly SharedPart[];
  /** mm of bed that may be used, about its middle; the machine's own when absent. */
  readonly bed?: number;
  readonly stopNow?: () => boolean;
}

export interface SharedLayout {
  /** For each part its record on the layout with all stations standing; not yet checked. */
  readonly trials: readonly Trial[];
  /** mm from outer edge to outer edge; no layout of these plans takes less than `bound`; what the bed takes. */
  readonly length: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly bed: number;
  /** For each part which of its plans, and how many of its strokes stand on other tools than that plan's own. */
  readonly chosen: readonly { readonly plan: number; readonly moved: number }[];
  readonly counts: RowAnswer<ToolWay, unknown>['counts'];
  readonly model: string;
}

export type SharedAnswer = { readonly ok: true; readonly value: SharedLayout } | { readonly ok: false; readonly sentence: string; readonly needed?: number };

/** Whole mm that no bed reaches: to tell what a row needs that does not fit. */
const ANY_BED = 20_000;

/** A plan of other tools is dearer than any move within the part's own best. */
const OTHER_PLAN = 100;

const MODEL =
  `The least length of bed from outer edge to outer edge, over the plans found for each part, every way to share stations of the same punch, die, facing and ears, every order of the stations ` +
  `and every length that the rack's segments make up for all at once; strokes that a plan makes on one station stay together, in their order and seats, tools stand ${BETWEEN_STATIONS} mm apart for hands and clamps, ` +
  `a sheet keeps ${BESIDE_SHEET} mm from any other station's tools (common practice, no source), and dies stand on the least risers that the one ram asks for.`;

/** The trial of one part on the row found. */
const recordOn = (row: LeastRow<ToolWay, readonly Segments[]>, part: number, rack: Rack): ReturnType<Replaceable['place']> => {
  const { froms, lengths, origins } = row.standing;
  const stations = row.stations.map(({ ways }, k) => stationOf(`S${k + 1}`, { pair: ways[0]!.pair, ...row.composed[k]! }, froms[k]!));
  const plan: Planned[] = [];
  const placements: Placement[] = [];
  let of: Replaceable | null = null;
  row.stations.forEach(({ ways }, station) => {
    let use = 0;
    for (const way of ways) {
      way.steps.forEach((step, i) => {
        const [low, high] = origins[station]![use++]!;
        if (way.part !== part) return;
        const { line } = step.option;
        const middle = froms[station]! + lengths[station]! / 2 - (line[0] + line[1]) / 2;
        plan[way.indices[i]!] = step;
        placements[way.indices[i]!] = { station, origin: Math.min(high, Math.max(low, middle)) };
        ({ of } = way);
      });
    }
  });
  return of!.place({ stations, placements, plan }, rack);
};

/**
 * One layout of stations for several parts: stations of one kind are one and the same where their lengths meet, and the row takes
 * the least bed that there is, by an exact search; or one sentence why there is none. Lengths in mm.
 */
export const sharedLayout = ({ machine, rack, parts, bed: asked, stopNow = () => false }: SharedAsked): SharedAnswer => {
  const length = Math.floor(Math.min(machine.length, asked ?? Infinity));
  const plans = ofUse(parts.map(({ plans: of }, part) => of.map((plan, k) => toolWays(part, plan, k === 0 ? 0 : OTHER_PLAN + k, machine))));
  const pairs = new Map(plans.flat().flatMap(({ stations }) => stations.flat().map(({ kind, pair }) => [kind, pair] as const)));
  const known = new Map<string, boolean>();
  const fits = (kind: string, mm: number): boolean => {
    const key = `${kind}:${mm}`;
    const so = known.get(key) ?? lengthFits({ pair: pairs.get(kind)!, length: mm });
    known.set(key, so);
    return so;
  };
  const together = createTogether(machine, rack);
  let givenUp = false;
  const onBed = (bed: Bed): RowAnswer<ToolWay, readonly Segments[]> => leastRow<ToolWay, readonly Segments[]>({
    parts: plans, bed, fits, stopNow,
    compose: (stations) => composeAll(stations.map(({ kind, length: mm }) => ({ pair: pairs.get(kind)!, length: mm })), () => (givenUp = true)),
    together,
    underOneRam: (stations) => {
      const stood = underOneRam(stations, machine, rack);
      // other risers may do: then nothing is claimed
      if (stood === 'not on risers') givenUp = true;
      if (stood === null || stood === 'not on risers') return null;
      const again = stood.map((ways) => merged(ways, bed, fits));
      return again.every((s): s is Merged<ToolWay> => s !== null) ? again : null;
    },
  });
  const bed: Bed = { length, between: BETWEEN_STATIONS, beside: BESIDE_SHEET };
  const { best, bound, proven, counts } = onBed(bed);
  const names = listed(parts.map(({ name }) => name));
  if (!best) {
    const anywhere = onBed({ ...bed, length: ANY_BED });
    if (!anywhere.best) return { ok: false, sentence: `${names} cannot stand on one layout: the rack's segments do not suffice for all their stations at once, or no risers let them stand under one ram.` };
    const needed = anywhere.best.span;
    if (needed <= length) return { ok: false, needed, sentence: `The stations of ${names} take ${needed} mm of bed and it has ${length} mm, but wherever they stand a step loads one cylinder past half the rating, a deep sheet stands outside the side frames or a finger is asked past the end of its Z.` };
    return { ok: false, needed, sentence: `The stations of ${names} need ${needed} mm of bed on one layout${anywhere.proven && !givenUp ? '' : ' as far as the search got'} and the bed takes ${length} mm.` };
  }
  const trials: Trial[] = [];
  for (const part of parts.keys()) {
    const record = recordOn(best, part, rack);
    if ('sentence' in record) return { ok: false, sentence: record.sentence };
    trials.push(record);
  }
  const claimed = proven && !givenUp;
  return {
    ok: true,
    value: {
      trials, length: best.span, bound: givenUp ? 0 : bound, proven: claimed, bed: length, counts, model: MODEL,
      chosen: parts.map((_, part) => ({ plan: best.plans[part]!, moved: best.stations.flatMap(({ ways }) => ways).reduce((sum, way) => sum + (way.part === part ? way.dearness : 0), 0) })),
    },
  };
};

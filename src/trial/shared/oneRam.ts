import type { Machine, Rack } from '../../shop/index.js';
import { type StationHeight, correctedHeights, heightFault } from '../heights.js';
import { emptyLimitOf, lowestSeat } from '../layout.js';
import { riserStock } from '../riserStock.js';
import type { Planned } from '../task.js';
import type { Merged } from './merging.js';
import { type ToolWay, wayOf } from './toolWay.js';

/** The same way with its die on a riser; null where a stroke cannot be made so. */
const onRiser = (way: ToolWay, riser: number, machine: Machine): ToolWay | null => {
  const steps = way.steps.map((step) => way.of.raised(step, riser));
  return steps.every((step): step is Planned => step !== null) ? wayOf(way, steps, machine, way.kind) : null;
};

/** A station by its tools without risers, as low as the ram goes in any of its strokes. */
const heightOf = (id: string, ways: readonly ToolWay[]): StationHeight => {
  const { pair } = ways[0]!;
  const lowest = Math.min(...ways.flatMap(({ steps }) => steps.map(lowestSeat)));
  return { id, dieHeight: pair.dieTop, punchHeight: pair.punch.height, emptyLimit: emptyLimitOf(pair), lowest: lowest - pair.dieTop };
};

/** Can two stations stand under one ram at all, on whatever risers the rack has? Worked out once for each two heights. */
export const createTogether = (machine: Machine, rack: Rack): ((a: ToolWay, b: ToolWay) => boolean) => {
  const known = new Map<string, boolean>();
  const heights = new Map<ToolWay, StationHeight>();
  const of = (way: ToolWay): StationHeight => {
    const height = heights.get(way) ?? heightOf(way.kind, [way]);
    heights.set(way, height);
    return height;
  };
  return (a, b) => {
    const two = [of(a), of(b)];
    const key = two.map(({ id, lowest }) => `${id} ${lowest}`).join('|');
    let can = known.get(key);
    if (can === undefined) known.set(key, (can = correctedHeights(two, riserStock(rack, [a, b].map(({ pair: { die } }) => ({ die, length: 0 }))).choices, machine.shutHeight) !== null));
    return can;
  };
};

/**
 * The stations as they stand under one ram: as they are where their heights suit each other, else on the least risers of the rack that
 * lift every fault. `null`: none do; 'not on risers': those do, but then a stroke cannot be made.
 */
export const underOneRam = (stations: readonly Merged<ToolWay>[], machine: Machine, rack: Rack): readonly (readonly ToolWay[])[] | 'not on risers' | null => {
  const heights = stations.map(({ ways }, i) => heightOf(`${i}`, ways));
  if (!heightFault(heights, heights.map(() => 0), machine.shutHeight)) return stations.map(({ ways }) => ways);
  const stock = riserStock(rack, stations.map(({ ways, least }) => ({ die: ways[0]!.pair.die, length: least })));
  const risers = correctedHeights(heights, stock.choices, machine.shutHeight, stock.suffice);
  if (!risers) return null;
  const raised = stations.map(({ ways }, i) => (risers[i] === 0 ? ways : ways.map((way) => onRiser(way, risers[i]!, machine))));
  return raised.every((ways): ways is readonly ToolWay[] => ways.every((way) => way !== null)) ? raised : 'not on risers';
};

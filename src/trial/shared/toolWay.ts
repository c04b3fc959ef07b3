import type { Machine } from '../../shop/index.js';
import type { Pair } from '../bodies.js';
import type { Replaceable } from '../input.js';
import type { Planned } from '../task.js';
import type { PartPlan, UnitWay } from './merging.js';
import { leavesSideways, useOf } from './useOf.js';

/** A station of a part's plan set up one way. */
export interface ToolWay extends UnitWay {
  readonly part: number;
  readonly of: Replaceable;
  /** Which strokes of the plan, and how they are made here. */
  readonly indices: readonly number[];
  readonly steps: readonly Planned[];
  readonly pair: Pair;
}

type Whose = Pick<ToolWay, 'part' | 'of' | 'indices' | 'dearness'>;

/** `kind` stays that of the tools without a riser. */
export const wayOf = (whose: Whose, steps: readonly Planned[], machine: Machine, kind?: string): ToolWay => {
  const { pair } = steps[0]!.option.setting;
  return {
    ...whose, kind: kind ?? pair.key, pair, steps, endOnly: steps.some(leavesSideways),
    uses: steps.map((step) => useOf(step, machine, whose.of.force(step))),
  };
};

/** A plan's stations, each as it is, then with each other pair that all its strokes can be made with. */
export const toolWays = (part: number, of: Replaceable, dearness: number, machine: Machine): PartPlan<ToolWay> => ({
  dearness,
  stations: [...new Set(of.stations)].map((station) => {
    const indices = of.stations.flatMap((s, i) => (s === station ? [i] : []));
    const steps = indices.map((i) => of.plan[i]!);
    const own = steps[0]!.action.pair;
    const others = of.pairsFor(steps[0]!).filter((pair) => pair !== own).flatMap((pair): ToolWay[] => {
      const moved = steps.map((step) => of.withPair(step, pair));
      return moved.every((step): step is Planned => step !== null) ? [wayOf({ part, of, indices, dearness: steps.length }, moved, machine)] : [];
    });
    return [wayOf({ part, of, indices, dearness: 0 }, steps, machine), ...others];
  }),
});

/** Stations of other heights may suit a neighbour under the one ram. */
const heightsOf = ({ pair }: ToolWay): string => `${pair.punch.height}|${pair.dieTop}`;

/**
 * Tools other than a plan's own are of use where two stations can be one by them, and where their heights are others: one for
 * each. The rest is left out.
 */
export const ofUse = (parts: readonly (readonly PartPlan<ToolWay>[])[]): readonly (readonly PartPlan<ToolWay>[])[] => {
  const holders = new Map<string, Set<readonly ToolWay[] | number>>();
  parts.forEach((plans, part) => plans.forEach(({ stations }) => stations.forEach((ways) => ways.forEach(({ kind }) => {
    // plans of one part stand in for each other; two stations of one plan may be one
    holders.set(kind, (holders.get(kind) ?? new Set()).add(part).add(stations.length > 1 ? ways : part));
  }))));
  const filtered = (ways: readonly ToolWay[]): readonly ToolWay[] => {
    const seen = new Set<string>();
    return ways.filter((way) => {
      const other = !seen.has(heightsOf(way));
      seen.add(heightsOf(way));
      return other || holders.get(way.kind)!.size > 1;
    });
  };
  return parts.map((plans) => plans.map((plan) => ({ ...plan, stations: plan.stations.map(filtered) })));
};

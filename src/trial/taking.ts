import { bitsOf } from './groups.js';
import type { Images } from './images.js';
import type { Node } from './node.js';
import { type OpenStation, stationsFor } from './openStation.js';
import type { StrokeOption } from './strokeOption.js';
import { type Action, type Held, type SearchTask, changeSeconds } from './task.js';
import { TIME } from './time.js';

/** A stroke that waits to be asked (no option yet) or, once answered, to be taken on a station. */
export interface Waiting {
  readonly parent: Node;
  readonly action: Action;
  readonly option: StrokeOption | null;
  readonly cost: number;
  readonly stations: readonly OpenStation[];
  readonly at: number;
}

/** May a node's bed take the pair of this stroke too? */
export const mayOpen = (task: SearchTask, { stations }: Node, { pair }: Action): boolean =>
  stations.some((s) => s.pair === pair) || stations.every((s) => task.together(s.pair, pair));

/** What it costs to go from a node's last stroke to this one, before the answer is known. s */
export const costBefore = (task: SearchTask, { last, cost, stations }: Node, action: Action): number => {
  const change = last ? (changeSeconds(last, action) + (last.pair === action.pair ? 0 : TIME.walk)) * task.handling : 0;
  return cost + action.base + change + (stations.some((s) => s.pair === action.pair) ? 0 : task.stationShare);
};

/** An answered stroke on each station that may take it. */
export const taken = (task: SearchTask, { parent, action, cost }: Pick<Waiting, 'parent' | 'action' | 'cost'>, option: StrokeOption): (Waiting & { readonly option: StrokeOption })[] => {
  const hasStation = parent.stations.some((s) => s.pair === action.pair);
  const extra = task.extra(option);
  const dearer = extra + task.handSetting(parent.option, option);
  return stationsFor(parent.stations, action, option, task.together).map((choice) => {
    const again = choice.isNew && hasStation ? task.stationShare : 0;
    const walk = parent.last && parent.last.pair === action.pair && choice.at !== parent.at ? TIME.walk * task.handling : 0;
    return { parent, action, option, cost: cost + dearer + again + walk, stations: choice.stations, at: choice.at };
  });
};

/** The node that a taken stroke leads to. */
export const nodeOf = (task: SearchTask, images: Images, { parent, action, option, cost, stations, at }: Waiting, held: Held | null): Node => {
  const { mask, last, by } = images.standing(parent.mask | bitsOf(task.groups[action.group]!), action);
  return { mask, parent, action, last, by, option, stations, at, cost, settled: new Set(), held };
};

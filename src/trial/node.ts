import { bitsOf } from './groups.js';
import type { Images } from './images.js';
import type { OpenStation } from './openStation.js';
import type { StrokeOption } from './strokeOption.js';
import type { Action, Held, Planned, SearchTask, Stood } from './task.js';

/** A partial plan. Where the part is symmetric its fold stands for all images of it, so its strokes are seen through symmetries. */
export interface Node {
  readonly mask: number;
  readonly parent: Node | null;
  /** The stroke made last, as the parent sees it and as this node does; null at the start. */
  readonly action: Action | null;
  readonly last: Action | null;
  /** The symmetry between the two: 0 none. */
  readonly by: number;
  readonly option: StrokeOption | null;
  readonly stations: readonly OpenStation[];
  /** Index of the station of the last stroke. */
  readonly at: number;
  /** s */
  readonly cost: number;
  /** Strokes (group and side) that the station at hand takes as cheaply as any pair ever could. */
  readonly settled: Set<number>;
  /** What a limit by tolerance remembers, null where there is none. */
  readonly held: Held | null;
}

export const rootOf = (held: Held | null): Node =>
  ({ mask: 0, parent: null, action: null, last: null, by: 0, option: null, stations: [], at: -1, cost: 0, settled: new Set(), held });

/** The stations of the plan that ends in a node, and its walks between them. */
export const stoodOf = (end: Node): Stood => {
  let walks = 0;
  for (let n: Node = end; n.parent?.parent; n = n.parent) if (n.at !== n.parent.at) walks++;
  return { stations: end.stations.length, walks };
};

/** The plan that ends in a node, its strokes as they are made; null should an image not be answered as its original was. */
export const planOf = (task: SearchTask, images: Images, end: Node): readonly Planned[] | null => {
  const nodes: Node[] = [];
  for (let n: Node = end; n.parent; n = n.parent) nodes.unshift(n);
  const by: number[] = [];
  const plan: Planned[] = [];
  let mask = 0;
  for (const node of nodes) {
    const action = images.original(node.action!, by);
    let option = node.option!;
    if (by.some((b) => b > 0)) {
      const answer = task.answer(action, mask);
      if (!answer.ok) return null;
      option = answer.option;
    }
    plan.push({ action, option, mask });
    mask |= bitsOf(task.groups[action.group]!);
    by.push(node.by);
  }
  return plan;
};

import type { Symmetry } from './symmetry.js';
import { type Action, type SearchTask, sameWay } from './task.js';

/** A fold and the stroke that made it last, as the search keeps them. */
export interface Standing {
  readonly mask: number;
  readonly last: Action;
  /** Which symmetry took them there: 0 none. */
  readonly by: number;
}

/** Folds and strokes under the part's symmetries: of all images of a fold one stands for the rest. */
export interface Images {
  readonly standing: (mask: number, last: Action) => Standing;
  /** The fold that stands for this one, and every symmetry that takes it there. */
  readonly fold: (mask: number) => { readonly mask: number; readonly by: readonly number[] };
  readonly image: (action: Action, by: number) => Action;
  /** Takes a stroke seen after the symmetries `by`, one after another, back to where they began. */
  readonly original: (action: Action, by: readonly number[]) => Action;
}

const towardsKey = (degrees: number): number => ((Math.round(degrees) % 360) + 360) % 360;

/** For each stroke (index) the stroke that a symmetry takes it to; null where one has none. */
const actionsBy = ({ actions, groups }: SearchTask, { bendTo, turned }: Symmetry): readonly number[] | null => {
  const groupTo = groups.map(({ bends }) => {
    const images = bends.map((b) => bendTo[b]!);
    return groups.findIndex((g) => g.bends.length === images.length && images.every((b) => g.bends.includes(b)));
  });
  const found = actions.map(({ group, pair, towards }) =>
    actions.findIndex((a) => a.group === groupTo[group] && a.pair === pair && sameWay(a.towards, turned(towards))));
  return found.includes(-1) ? null : found;
};

/** The symmetries of a task that take every one of its strokes to another one, as maps of strokes and folds. */
export const imagesOf = (task: SearchTask): Images => {
  const { actions } = task;
  const indexOf = new Map(actions.map((a, i) => [a, i]));
  const maps = task.symmetries.flatMap((symmetry) => {
    const to = actionsBy(task, symmetry);
    return to ? [{ to, bendTo: symmetry.bendTo }] : [];
  });
  const imageOf = (mask: number, bendTo: readonly number[]): number => {
    let image = 0;
    for (let left = mask; left !== 0; left &= left - 1) image |= 1 << bendTo[31 - Math.clz32(left & -left)]!;
    return image;
  };
  const inverse = maps.map(({ to }) => {
    const back: number[] = [];
    to.forEach((image, i) => (back[image] = i));
    return back;
  });
  return {
    fold: (mask) => {
      let best = mask;
      let by = [0];
      maps.forEach(({ bendTo }, i) => {
        const image = imageOf(mask, bendTo);
        if (image < best) [best, by] = [image, []];
        if (image === best) by.push(i + 1);
      });
      return { mask: best, by };
    },
    image: (action, by) => (by === 0 ? action : actions[maps[by - 1]!.to[indexOf.get(action)!]!]!),
    standing: (mask, last) => {
      let best: Standing = { mask, last, by: 0 };
      maps.forEach(({ to, bendTo }, i) => {
        const image = imageOf(mask, bendTo);
        if (image > best.mask) return;
        const action = actions[to[indexOf.get(last)!]!]!;
        if (image < best.mask || towardsKey(action.towards) < towardsKey(best.last.towards)) best = { mask: image, last: action, by: i + 1 };
      });
      return best;
    },
    original: (action, by) => {
      let index = indexOf.get(action)!;
      for (let k = by.length - 1; k >= 0; k--) if (by[k]! > 0) index = inverse[by[k]! - 1]![index]!;
      return actions[index]!;
    },
  };
};

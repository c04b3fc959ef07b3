import { type FewestStations, type Lengths, fewestStations } from './fewestStations.js';
import { bitsOf } from './groups.js';
import type { Images } from './images.js';
import type { OpenStation } from './openStation.js';
import { type Action, type SearchTask, changeSeconds } from './task.js';
import { TIME } from './time.js';

/** What is known of a part when every fold that can still be finished has been looked at. */
export interface ToGo {
  /** s: the least that the strokes left can take from a fold, with the ways between stations and the stations still to be set up. */
  readonly seconds: (mask: number, last: Action | null, stations: readonly OpenStation[]) => number;
  readonly folds: number;
}

interface Stroke {
  readonly action: Action;
  /** On its own, with its ways in and out. */
  readonly seconds: number;
  readonly lengths: Lengths;
}

interface Fold {
  /** Least time to go by how the sheet lies and which pair is at hand, set-ups aside; last, where nothing has been done yet. */
  readonly least: Float64Array;
  /** The same where another pair costs no walk. */
  readonly unwalked: Float64Array;
  /** By group and pair: the tool lengths that this fold or a later one allows; undefined where none does. */
  readonly lengths: (Lengths | undefined)[][];
  fewest?: FewestStations;
}

const ANY: Lengths = { least: 0, most: Infinity };

const leastOf = ({ base, leastExtra }: Action): number => base + leastExtra;

const joined = (one: Lengths | undefined, other: Lengths): Lengths =>
  one ? { least: Math.min(one.least, other.least), most: Math.max(one.most, other.most) } : other;

/**
 * The exact time to go from every fold that can still be finished, unbending from the finished part, each set of images looked
 * at once. Null when there are more than `most` of them, or when it has to stop. Makes a bound that knows dead ends; parts whose
 * bends must come in turn have few such folds, however many bends. `thorough` asks every pair in every fold, so that the stations
 * to come are known too; else only until the quickest one is known.
 */
export const timeToGo = (task: SearchTask, images: Images, most: number, thorough: boolean): ToGo | null => {
  const { groups, actions } = task;
  const bits = groups.map(bitsOf);
  const full = bits.reduce((a, b) => a | b, 0);
  const pairs = 1 + Math.max(0, ...actions.map((a) => a.pair));
  const ways: Action[] = [];
  const wayOf = new Map<Action, number>();
  for (const action of actions) {
    const so = ways.findIndex((w) => changeSeconds(w, action) === 0);
    wayOf.set(action, so >= 0 ? so : ways.push(action) - 1);
  }
  const change = ways.map((from) => ways.map((to) => changeSeconds(from, to) * task.handling));
  const walk = TIME.walk * task.handling;
  const start = ways.length * pairs;
  const mine = groups.map((_, g) => actions.filter((a) => a.group === g).sort((a, b) => leastOf(a) - leastOf(b)));
  const asked = new Map<number, readonly Stroke[]>();
  const emptyFold = (time: number): Fold => ({ least: new Float64Array(start + 1).fill(time), unwalked: new Float64Array(ways.length + 1).fill(time), lengths: groups.map(() => []) });

  const strokes = (group: number, mask: number): readonly Stroke[] => {
    const key = mask * groups.length + group;
    let found = asked.get(key);
    if (!found) {
      const best = [Infinity, Infinity];
      asked.set(key, (found = mine[group]!.flatMap((action): Stroke[] => {
        if (!task.allows(action, mask)) return [];
        const least = leastOf(action);
        // no better than one that is known to serve: taken at its least without being asked
        if (!thorough && least >= best[action.gaugeSide]!) return [{ action, seconds: least, lengths: ANY }];
        const answer = task.answer(action, mask);
        if (!answer.ok) return [];
        const { need, tools: { window } } = answer.option;
        const seconds = action.base + task.extra(answer.option);
        best[action.gaugeSide] = Math.min(best[action.gaugeSide]!, seconds);
        return [{ action, seconds, lengths: { least: need[1] - need[0], most: window[1] - window[0] } }];
      })));
    }
    return found;
  };
  /** Takes note of a stroke at `fold`, as it is seen there, that leads to `after`, where it is seen as `arrived`. */
  const lead = (fold: Fold, action: Action, after: Fold, arrived: Action, { seconds, lengths }: Stroke): void => {
    const { pair, group } = action;
    const [way, later] = [wayOf.get(action)!, wayOf.get(arrived)!];
    const total = seconds + after.least[later * pairs + pair]!;
    const bare = seconds + after.unwalked[later]!;
    for (let from = 0; from < ways.length; from++) {
      const turned = change[from]![way]!;
      for (let p = 0; p < pairs; p++) {
        const at = from * pairs + p;
        fold.least[at] = Math.min(fold.least[at]!, total + turned + (p === pair ? 0 : walk));
      }
      fold.unwalked[from] = Math.min(fold.unwalked[from]!, bare + turned);
    }
    fold.least[start] = Math.min(fold.least[start]!, total);
    fold.unwalked[ways.length] = Math.min(fold.unwalked[ways.length]!, bare);
    fold.lengths[group]![pair] = joined(fold.lengths[group]![pair], lengths);
  };
  /** Tool lengths that later folds allow, each group seen as `groupTo` says. */
  const inherit = (fold: Fold, after: Fold, groupTo: readonly number[]): void => after.lengths.forEach((of, g) => of.forEach((room, pair) => {
    const to = fold.lengths[groupTo[g]!]!;
    if (room) to[pair] = joined(to[pair], room);
  }));

  const known = new Map<number, Fold>([[full, emptyFold(0)]]);
  let level = [full];
  while (level.length > 0) {
    const before = new Set<number>();
    for (const mask of level) {
      const after = known.get(mask)!;
      for (let g = 0; g < bits.length; g++) {
        if ((mask & bits[g]!) !== bits[g]) continue;
        if (task.stopNow()) return null;
        const { mask: earlier, by } = images.fold(mask & ~bits[g]!);
        const back = (action: Action): Action => images.original(action, [by[0]!]);
        const found = strokes(images.image(mine[g]![0]!, by[0]!).group, earlier);
        if (found.length === 0) continue;
        const fold = known.get(earlier) ?? emptyFold(Infinity);
        known.set(earlier, fold);
        if (known.size > most) return null;
        before.add(earlier);
        // seen as this fold sees it, and then by each symmetry that takes the earlier fold to where it stands
        for (const s of by) {
          for (const stroke of found) lead(fold, images.image(back(stroke.action), s), after, back(stroke.action), stroke);
          inherit(fold, after, mine.map(([first]) => images.image(first!, s).group));
        }
      }
    }
    level = [...before];
  }
  const leftOf = (mask: number): number => bits.reduce((left, b, g) => ((mask & b) === 0 ? left | (1 << g) : left), 0);
  return {
    folds: known.size,
    seconds: (mask, last, stations) => {
      const fold = known.get(mask);
      if (!fold) return Infinity;
      const more = (fold.fewest ??= fewestStations(fold.lengths))(leftOf(mask), stations);
      const way = last ? wayOf.get(last)! : null;
      const walked = way === null ? fold.least[start]! : fold.least[way * pairs + last!.pair]!;
      const apart = (way === null ? fold.unwalked[ways.length]! : fold.unwalked[way]!) + Math.max(0, last ? more : more - 1) * walk;
      return Math.max(walked, apart) + more * task.stationShare;
    },
  };
};

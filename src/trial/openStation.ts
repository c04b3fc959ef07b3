import type { StrokeOption } from './strokeOption.js';
import type { Action, SearchTask } from './task.js';

/** A station set up so far: a pair, and the tool lengths that suit every stroke made on it. mm */
export interface OpenStation {
  readonly pair: number;
  readonly least: number;
  readonly most: number;
}

/** One way to take a stroke: the stations after it, and on which it is made. */
export interface Taken {
  readonly stations: readonly OpenStation[];
  readonly at: number;
  readonly isNew: boolean;
  /** The station was there and keeps its lengths. */
  readonly unchanged: boolean;
}

export const pairsOf = (stations: readonly OpenStation[]): number => stations.reduce((set, s) => set | (1 << s.pair), 0);

/**
 * The stations that may take a stroke: every open one of its pair whose lengths still agree, and a new one unless an open
 * one takes it without being narrowed.
 */
export const stationsFor = (stations: readonly OpenStation[], action: Action, option: StrokeOption, together: SearchTask['together']): readonly Taken[] => {
  const least = option.need[1] - option.need[0];
  const most = option.tools.window[1] - option.tools.window[0];
  const found: Taken[] = [];
  stations.forEach((s, at) => {
    const joined = { pair: s.pair, least: Math.max(s.least, least), most: Math.min(s.most, most) };
    if (s.pair !== action.pair || joined.least > joined.most) return;
    const unchanged = joined.least === s.least && joined.most === s.most;
    found.push({ stations: unchanged ? stations : stations.map((other, i) => (i === at ? joined : other)), at, isNew: false, unchanged });
  });
  if (!found.some((f) => f.unchanged) && stations.every((s) => s.pair === action.pair || together(s.pair, action.pair))) {
    found.push({ stations: [...stations, { pair: action.pair, least, most }], at: stations.length, isNew: true, unchanged: false });
  }
  return found;
};

/** The same stations and the one at hand, as a key: lengths to the millimetre. */
export const stationsKey = (stations: readonly OpenStation[], at: number): string => {
  const each = stations.map((s) => `${s.pair}:${s.least.toFixed(0)}-${s.most.toFixed(0)}`);
  const here = each[at]!;
  return `${here}|${each.length > 1 ? each.sort().join() : ''}`;
};

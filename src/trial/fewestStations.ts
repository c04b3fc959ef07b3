import type { OpenStation } from './openStation.js';

/** Tool lengths that some fold allows a stroke: mm. */
export interface Lengths {
  readonly least: number;
  readonly most: number;
}

/** From the groups left (bits) and the stations that stand: how many more there must be. */
export type FewestStations = (left: number, stations: readonly OpenStation[]) => number;

/**
 * The fewest stations yet to be set up for the groups left (bits), from those that stand: each group needs one with a pair and a
 * tool length that some fold allows it. Exact for these lengths, so never more than a plan needs.
 */
export const fewestStations = (lengths: readonly (readonly (Lengths | undefined)[])[]): FewestStations => {
  // every pair at every length that could matter, as the groups it serves
  const sets = new Set<number>();
  const pairs = Math.max(0, ...lengths.map((of) => of.length));
  for (let pair = 0; pair < pairs; pair++) {
    for (const at of lengths) {
      const length = at[pair]?.least;
      if (length === undefined) continue;
      sets.add(lengths.reduce((bits, of, g) => {
        const room = of[pair];
        return room && room.least <= length && length <= room.most ? bits | (1 << g) : bits;
      }, 0));
    }
  }
  const candidates = [...sets].filter((set) => ![...sets].some((other) => other !== set && (set & ~other) === 0));
  const known = new Map<number, number>([[0, 0]]);
  const cover = (left: number): number => {
    const so = known.get(left);
    if (so !== undefined) return so;
    const lowest = left & -left;
    let least = Infinity;
    for (const set of candidates) if ((set & lowest) !== 0) least = Math.min(least, 1 + cover(left & ~set));
    known.set(left, least);
    return least;
  };
  const served = (group: number, { pair, least, most }: OpenStation): boolean => {
    const room = lengths[group]![pair];
    return room !== undefined && Math.max(room.least, least) <= Math.min(room.most, most);
  };
  return (left, stations) => {
    let bare = 0;
    for (let rest = left; rest !== 0; rest &= rest - 1) {
      const group = 31 - Math.clz32(rest & -rest);
      if (!stations.some((s) => served(group, s))) bare |= 1 << group;
    }
    return cover(bare);
  };
};

/** What the one-ram rule needs to know of a station. mm */
export interface StationHeight {
  readonly id: string;
  /** Die seat to the die's top face, without further risers. */
  readonly dieHeight: number;
  readonly punchHeight: number;
  /** How far the tip may enter this die with no sheet in it. */
  readonly emptyLimit: number;
  /** The punch shoulder seat's lowest place over the die's top face, over all steps made here. */
  readonly lowest: number;
}

export type HeightFault =
  | { readonly kind: 'shut'; readonly working: string; readonly by: number }
  | { readonly kind: 'one ram'; readonly working: string; readonly struck: string; readonly by: number };

/**
 * All stations stand under one ram: at the lowest place of each, every other punch must stay clear of its own empty die,
 * and the ram cannot go under its shut height. The worst fault, or null. `risers` in mm, one for each station.
 */
export const heightFault = (stations: readonly StationHeight[], risers: readonly number[], shutHeight: number): HeightFault | null => {
  let worst: HeightFault | null = null;
  const take = (fault: HeightFault): void => {
    if (fault.by > 0 && (!worst || fault.by > worst.by)) worst = fault;
  };
  stations.forEach((working, i) => {
    const seat = working.dieHeight + risers[i]! + working.lowest;
    take({ kind: 'shut', working: working.id, by: shutHeight - seat });
    stations.forEach((other, j) => {
      if (j === i) return;
      const tip = seat - other.punchHeight;
      take({ kind: 'one ram', working: working.id, struck: other.id, by: other.dieHeight + risers[j]! - tip - other.emptyLimit });
    });
  });
  return worst;
};

/**
 * The least risers (by their sum) under the dies that lift every fault; null when none of those at hand do. Every choice
 * is tried: a bed holds few stations and a rack few heights. `suffice`: has the rack so many for all stations at once?
 */
export const correctedHeights = (stations: readonly StationHeight[], choices: readonly (readonly number[])[], shutHeight: number, suffice: (risers: readonly number[]) => boolean = () => true): readonly number[] | null => {
  let best: readonly number[] | null = null;
  let least = Infinity;
  const visit = (risers: readonly number[], sum: number): void => {
    if (sum >= least) return;
    if (risers.length === stations.length) {
      if (heightFault(stations, risers, shutHeight) || !suffice(risers)) return;
      best = risers;
      least = sum;
      return;
    }
    for (const height of choices[risers.length]!) visit([...risers, height], sum + height);
  };
  visit([], 0);
  return best;
};

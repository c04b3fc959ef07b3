import type { Rack } from '../../shop/index.js';
import type { Trial } from '../../trial/index.js';

/** Risers of one height and seat that the day needs under its dies. */
export interface KitRiser {
  readonly kind: 'riser';
  /** mm */
  readonly height: number;
  readonly seat: string;
  /** mm of bed that stands on them at the same time, by the part that needs most. */
  readonly needed: number;
  /** mm of bed that those of the rack carry in all. */
  readonly atHand: number;
}

/** mm within which two heights are one and the same riser. */
const SAME = 0.01;

/** mm of bed on risers of each height and seat in one trial. */
const inUse = ({ stations, dies }: Trial): readonly Pick<KitRiser, 'height' | 'seat' | 'needed'>[] => stations.filter(({ riser }) => riser > 0).map(({ riser, die, dieSegments }) =>
  ({ height: riser, seat: dies.find(({ id }) => id === die)!.tang, needed: dieSegments.reduce((sum, { length }) => sum + length, 0) }));

/** The risers to lay out for these trials, low ones first: the parts have them one after another. */
export const kitRisers = (trials: readonly Trial[], rack: Pick<Rack, 'risers'>): readonly KitRiser[] => {
  const used = trials.map(inUse);
  const kinds = new Map(used.flat().map(({ height, seat }) => [`${height.toFixed(2)} ${seat}`, { height, seat }]));
  return [...kinds.values()].sort((a, b) => a.height - b.height).map(({ height, seat }) => {
    const lengthOf = (list: readonly { readonly height: number; readonly seat: string }[], length: (k: number) => number): number =>
      list.reduce((sum, it, k) => sum + (it.seat === seat && Math.abs(it.height - height) < SAME ? length(k) : 0), 0);
    return {
      kind: 'riser', height, seat, needed: Math.max(...used.map((list) => lengthOf(list, (k) => list[k]!.needed))), atHand: lengthOf(rack.risers, (k) => rack.risers[k]!.length),
    };
  });
};

/** "20 mm high, seat A: 430 mm of bed at once (4200 mm at hand)"; `length` says mm as they are to be shown, with their unit. */
export const riserInWords = ({ height, seat, needed, atHand }: KitRiser, length: (mm: number) => string): string =>
  `${length(height)} high, ${seat}: ${length(needed)} of bed at once (${length(atHand)} at hand${needed > atHand ? ', ⚠ too few' : ''})`;

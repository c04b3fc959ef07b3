import type { Bed, RowStation, RowUse } from './row.js';

/** One way to set up a station of a plan: a kind of tools, and what its strokes then ask of the row. */
export interface UnitWay {
  /** Stations of one kind may be one and the same. */
  readonly kind: string;
  readonly uses: readonly RowUse[];
  /** A part leaves it sideways. */
  readonly endOnly: boolean;
  /** 0 as the plan has it. */
  readonly dearness: number;
}

/** A plan of a part: each of its stations, whose strokes stay together, with the ways to set it up. */
export interface PartPlan<W extends UnitWay> {
  readonly stations: readonly (readonly W[])[];
  /** 0 for the part's own best plan. */
  readonly dearness: number;
}

/** A station of the shared row, and whose stations it is. */
export interface Merged<W extends UnitWay> extends RowStation {
  readonly kind: string;
  readonly ways: readonly W[];
}

/** Can the rack make up a station of this kind, were it alone? Whole mm. */
export type Fits = (kind: string, length: number) => boolean;

/** Sums of mm in another order differ by less. */
const ROUNDING = 1e-6;

/** One station for all these ways of one kind, as long as all of them and the rack let it be; null where they do not meet. */
export const merged = <W extends UnitWay>(ways: readonly W[], bed: Bed, fits: Fits): Merged<W> | null => {
  const { kind } = ways[0]!;
  const uses = ways.flatMap((way) => way.uses);
  let least = Math.max(1, ...uses.map(({ need }) => Math.ceil(need[1] - need[0] - ROUNDING)));
  let most = Math.min(bed.length, ...uses.map(({ window }) => Math.floor(window[1] - window[0] + ROUNDING)));
  while (least <= most && !fits(kind, least)) least++;
  while (most > least && !fits(kind, most)) most--;
  return least <= most ? { kind, ways, uses, least, most, endOnly: ways.some((way) => way.endOnly) } : null;
};

import type { Die, Rack } from '../shop/index.js';

/** The risers that stations can stand on, mm of height for each (0 is none), and whether the rack has enough of them for all at once. */
export interface RiserStock {
  readonly choices: readonly (readonly number[])[];
  suffice(heights: readonly number[]): boolean;
}

/** mm of bed that risers of one height and seat carry in all. */
const carried = ({ risers }: Rack, seat: string, height: number): number => risers.reduce((sum, r) => sum + (r.seat === seat && r.height === height ? r.length : 0), 0);

/** What the rack can lay under these dies over these lengths of bed, mm: what one station takes the others do not have. */
export const riserStock = (rack: Rack, stations: readonly { readonly die: Die; readonly length: number }[]): RiserStock => ({
  choices: stations.map(({ die: { tang }, length }) => [0, ...new Set(rack.risers.filter((r) => r.seat === tang).map((r) => r.height))].filter((h) => h === 0 || carried(rack, tang, h) >= length)),
  suffice: (heights) => stations.every(({ die: { tang } }, i) => {
    const height = heights[i]!;
    const asked = stations.reduce((sum, s, k) => sum + (heights[k] === height && s.die.tang === tang ? s.length : 0), 0);
    return height === 0 || asked <= carried(rack, tang, height);
  }),
});

import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { symmetriesOf } from './symmetry.js';

const sheetOf = (id: string) => {
  const { part } = benchParts().find((b) => b.id === id)!;
  return { part, allowances: part.bends.map((b) => 2 + b.bendAngle / 90) };
};

/** Rotations and reflections of the figure, less the identity: counted by hand. */
describe('symmetries of blanks', () => {
  it.each([
    // a rectangle: half a turn; and two mirrors
    ['P7', 1, 3], ['P8', 1, 3], ['P9', 1, 3],
    // a hexagon with like arms: five turns; and six mirrors
    ['P11', 5, 11],
    // a channel with equal legs turned end for end; and both mirrors
    ['P2', 1, 3],
    // an angle with unequal legs: only the mirror across its middle
    ['P1', 0, 1],
    // a stair: half a turn would put A bends on B bends: the mirror along the profile alone
    ['P4', 0, 1],
  ] as const)('%s: %i turns, %i with mirrors', (id, turns, all) => {
    expect(symmetriesOf(sheetOf(id), false)).toHaveLength(turns);
    expect(symmetriesOf(sheetOf(id), true)).toHaveLength(all);
  });

  it('takes each bend to one like it, no two to the same', () => {
    for (const { bendTo } of symmetriesOf(sheetOf('P11'), true)) expect(new Set(bendTo).size).toBe(bendTo.length);
  });

  it('a hole off the middle leaves nothing', () => {
    const sheet = sheetOf('P7');
    const hole = [[10, 10], [10, 20], [20, 20], [20, 10]].map(([x, y]) => ({ x: x!, y: y!, bulge: 0 }));
    const plates = sheet.part.plates.map((p, i) => (i === 0 ? { ...p, holes: [hole] } : p));
    expect(symmetriesOf({ ...sheet, part: { ...sheet.part, plates } }, true)).toHaveLength(0);
  });
});

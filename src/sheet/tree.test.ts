import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { type Part, path, tree } from './index.js';

const bench = (id: string): Part => benchParts().find((it) => it.id === id)!.part;

const diameter = (part: Part): number => {
  const checked = tree(part);
  if (!checked.ok) throw new Error(checked.failure.sentence);
  return checked.value.diameter;
};

describe('tree', () => {
  it('knows the most bends between two plates', () => {
    // arms of 1, 2, 3 levels: from tip to tip of two arms; a profile from end to end
    expect([diameter(bench('P1')), diameter(bench('P7')), diameter(bench('P8')), diameter(bench('P9'))]).toEqual([1, 2, 4, 6]);
    expect([diameter(bench('P11')), diameter(bench('P12')), diameter(bench('P13'))]).toEqual([6, 2, 10]);
  });

  it('finds the bends on the way', () => {
    // P8: plates 1, 3, 5, 7 flanges, 2, 4, 6, 8 returns; bends b1.. in the order of growth
    expect(path(bench('P8'), 2, 4)).toEqual([1, 0, 2, 3]);
    expect(path(bench('P8'), 0, 0)).toEqual([]);
  });

  it('refuses a ring with its bends', () => {
    const part = bench('P6');
    const closing = { ...part.bends[0]!, id: 'b4', sides: [part.bends[2]!.sides[1], part.bends[0]!.sides[0]] as const };
    const checked = tree({ ...part, bends: [...part.bends, closing] });
    expect(checked.ok).toBe(false);
    if (checked.ok) return;
    expect(checked.failure.code).toBe('cycle');
    expect([...checked.failure.bends].sort()).toEqual(['b1', 'b2', 'b3', 'b4']);
  });

  it('refuses plates that hang on nothing', () => {
    const part = bench('P2');
    const checked = tree({ ...part, bends: part.bends.slice(0, 1) });
    expect(checked).toMatchObject({ ok: false, failure: { code: 'forest', plates: [2] } });
  });
});

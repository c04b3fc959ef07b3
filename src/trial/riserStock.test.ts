import { describe, expect, it } from 'vitest';
import { demoRack } from '../shop/index.js';
import { correctedHeights } from './heights.js';
import { riserStock } from './riserStock.js';

describe('risers for several stations', () => {
  const rack = demoRack();
  const die = rack.dies.find((d) => d.shape === 'V' && d.tang === rack.risers[0]!.seat)!;
  const [ten, five] = [10, 5].map((height) => ({ ...rack.risers[0]!, id: `r${height}`, height }));
  const two = [{ die, length: 300 }, { die, length: 250 }];

  it('what one takes the other does not have', () => {
    const stock = riserStock({ ...rack, risers: [{ ...ten!, length: 500 }, { ...five!, length: 260 }] }, two);
    expect(stock.choices).toEqual([[0, 10], [0, 10, 5]]);
    expect([[10, 10], [10, 5], [10, 0], [0, 0]].map((heights) => stock.suffice(heights))).toEqual([false, true, true, true]);
  });

  it('several risers of one height add up', () => {
    const stock = riserStock({ ...rack, risers: [{ ...ten!, length: 200 }, { ...ten!, id: 'more', length: 350 }] }, two);
    expect(stock.choices).toEqual([[0, 10], [0, 10]]);
    expect(stock.suffice([10, 10])).toBe(true);
  });

  it('the least risers are sought among those that there are enough of', () => {
    // the shut height asks at least 10 under both
    const stations = ['a', 'b'].map((id) => ({ id, dieHeight: 60, punchHeight: 100, emptyLimit: 5, lowest: 96 }));
    const of = (length: number): readonly number[] | null => {
      const stock = riserStock({ ...rack, risers: [{ ...ten!, length }] }, two);
      return correctedHeights(stations, stock.choices, 166, stock.suffice);
    };
    expect(of(550)).toEqual([10, 10]);
    expect(of(549)).toBeNull();
  });
});

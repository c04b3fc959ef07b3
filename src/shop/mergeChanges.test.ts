import { describe, expect, it } from 'vitest';
import { mergeChanges } from './mergeChanges.js';

describe('what two made of the same thing', () => {
  const base = { throat: 200, openHeight: 335, gauge: { x: { drive: 'powered', min: 4, max: 400, speed: 600 } }, footprint: [1900, 1500], options: [{ id: 'a', price: 1 }, { id: 'b', price: 2 }] };

  it('other fields, entries of lists by their id, figures of a pair: all of both', () => {
    const theirs = { ...base, throat: 260, footprint: [2000, 1500], options: [{ id: 'b', price: 2 }, { id: 'c', price: 3 }] };
    const mine = { ...base, openHeight: 340, footprint: [1900, 1600], options: [{ id: 'a', price: 1 }, { id: 'b', price: 5 }, { id: 'd', price: 4 }], own: true };
    expect(mergeChanges(base, theirs, mine)).toEqual({
      data: { throat: 260, openHeight: 340, gauge: base.gauge, footprint: [2000, 1600], options: [{ id: 'b', price: 5 }, { id: 'c', price: 3 }, { id: 'd', price: 4 }], own: true },
      both: [],
    });
  });

  it('the same field set otherwise by both is named, and mine stands', () => {
    expect(mergeChanges(base, { ...base, throat: 260 }, { ...base, throat: 270 })).toEqual({ data: { ...base, throat: 270 }, both: [{ place: 'throat', theirs: 260, mine: 270 }] });
    expect(mergeChanges(base, { ...base, throat: 260 }, { ...base, throat: 260 })).toEqual({ data: { ...base, throat: 260 }, both: [] });
  });

  it('an axis that one drives otherwise is no mixture of two', () => {
    const fixed = { drive: 'fixed', at: 90 };
    const longer = { ...base.gauge.x, max: 500 };
    expect(mergeChanges(base, { ...base, gauge: { x: fixed } }, { ...base, gauge: { x: longer } })).toEqual({ data: { ...base, gauge: { x: longer } }, both: [{ place: 'gauge, x', theirs: fixed, mine: longer }] });
  });

  it('what one takes out and the other changes is named; a list without ids that both made longer too', () => {
    const gone = { ...base, options: [{ id: 'b', price: 2 }] };
    expect(mergeChanges(base, gone, { ...base, options: [{ id: 'a', price: 9 }, { id: 'b', price: 2 }] })).toEqual({ data: { ...base, options: [{ id: 'b', price: 2 }, { id: 'a', price: 9 }] }, both: [{ place: 'options, a', theirs: undefined, mine: { id: 'a', price: 9 } }] });
    expect(mergeChanges([1], [1, 2], [1, 3])).toEqual({ data: [1, 3], both: [{ place: '', theirs: [1, 2], mine: [1, 3] }] });
  });
});

import { describe, expect, it } from 'vitest';
import { chosenOf } from './chosenOf.js';

describe('what a list has chosen', () => {
  const floor = [{ id: 'press-1' }, { id: 'press-2' }];
  it('is what was wanted first and is there, else the list\'s first', () => {
    expect(chosenOf(floor, 'press-2', 'press-1')).toBe('press-2');
    expect(chosenOf(floor, undefined, 'gone', 'press-2')).toBe('press-2');
    expect(chosenOf(floor, undefined, 'gone')).toBe('press-1');
    expect(chosenOf([], 'gone')).toBeUndefined();
  });
});

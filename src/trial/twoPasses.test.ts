import { describe, expect, it } from 'vitest';
import { profilePart } from '../sheet/index.js';
import { anglesIn, inTurn, statesOf } from './states.js';
import { twiceOf } from './twoPasses.js';

const made = profilePart({ name: 'stair', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [30, 40, 30], turns: [90, -60] });
if (!made.ok) throw new Error(made.failure.sentence);
const part = made.value;

describe('a bend in two passes', () => {
  it('has three states: flat, begun, finished, and two strokes in that order', () => {
    const asked = twiceOf(part, [{ bend: 'b1', first: 40 }]);
    if ('fault' in asked) throw new Error(asked.fault.sentence);
    const { grouped, count } = statesOf(part, asked.twice);
    expect(count).toBe(3);
    expect(grouped.map(({ bends, pass, bits, needs }) => ({ bends, pass, bits, needs }))).toEqual([
      { bends: [0], pass: 1 }, { bends: [1], pass: undefined }, { bends: [0], pass: 2, bits: 4, needs: 1 },
    ].map((g) => ({ bits: undefined, needs: undefined, ...g })));
    const angles = anglesIn(part, asked.twice);
    expect([0, 1, 2, 3, 5, 7].map((mask) => [angles(mask)(0), angles(mask)(1)])).toEqual([[0, 0], [40, 0], [0, 60], [40, 60], [90, 0], [90, 60]]);
    const mayCome = inTurn(grouped);
    // strokes 0, 1, 2 in each state: the second pass asks the first, and the first does not come after it
    expect([0, 1, 2, 3].map((mask) => [0, 1, 2].map((g) => mayCome(g, mask)))).toEqual([[true, true, false], [true, true, true], [true, true, false], [true, true, true]]);
    expect(mayCome(0, 4)).toBe(false);
  });

  it('is half of it where no angle is named, and refused outside what two strokes share', () => {
    expect(twiceOf(part, [{ bend: 'b2' }])).toEqual({ twice: new Map([[1, 30]]) });
    for (const [asked, words] of [
      [{ bend: 'b9', first: 40 }, 'no bend b9'], [{ bend: 'b2', first: 55 }, 'between 10 and 50 degrees, not to 55'], [{ bend: 'b1', first: 5 }, 'between 10 and 80 degrees, not to 5'],
    ] as const) {
      const answer = twiceOf(part, [asked]);
      expect('fault' in answer ? answer.fault.sentence : '').toContain(words);
    }
  });
});

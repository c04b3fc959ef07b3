import { describe, expect, it } from 'vitest';
import { mulberry32 } from '../bench/mulberry32.js';
import { everyRow } from '../bench/oracle/everyRow.js';
import { mixedIntegerRow } from '../bench/oracle/mixedIntegerRow.js';
import { questionOf, randomRow } from '../bench/oracle/rowProblem.js';
import { leastRow } from '../src/trial/shared/leastRow.js';

// The shortest row of shared stations against every choice of plans, every sharing, order, length and whole millimetre, and
// against a mixed-integer model of the same question.

describe('the shortest row of stations for several parts', () => {
  for (const seed of [1, 2]) {
    it(`is as short as the shortest of all rows (seed ${seed})`, () => {
      const random = mulberry32(seed);
      let stood = 0;
      for (let round = 0; round < 60; round++) {
        const problem = randomRow(random);
        const { best, proven, bound } = leastRow(questionOf(problem));
        const span = everyRow(problem);
        expect([best?.span ?? null, proven, bound], `seed ${seed}, round ${round}`).toEqual([span, true, span ?? Infinity]);
        if (span !== null) stood++;
      }
      expect(stood).toBeGreaterThan(15);
      expect(stood).toBeLessThan(60);
    });
  }

  it('agrees with the mixed-integer solver (seed 3)', async () => {
    const random = mulberry32(3);
    for (let round = 0; round < 12; round++) {
      const problem = randomRow(random);
      const span = await mixedIntegerRow(problem);
      const { best } = leastRow(questionOf(problem));
      if (span === null) expect(best, `round ${round}`).toBeNull();
      else expect(best!.span, `round ${round}`).toBeCloseTo(span, 4);
    }
  });
});

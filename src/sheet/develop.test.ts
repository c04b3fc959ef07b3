import { describe, expect, it } from 'vitest';
import { deductionFrom } from '../forming/index.js';
import { type Part, develop, profilePart, ruleInWords } from './index.js';

const INCH = 25.4;

const bent = (thickness: number, insideRadius: number, turn: number): Part => {
  const built = profilePart({ name: 'x', thickness, insideRadius, width: 10, flanges: [500, 500], turns: [turn] });
  if (!built.ok) throw new Error(built.failure.sentence);
  return built.value;
};

describe('develop against published values', () => {
  it('half-thickness neutral line: NAVEDTRA 14119, figures 13-49 and 13-50', () => {
    const half = { name: 'K-factor', k: 0.5 } as const;
    // R 3 in, T 1/2 in, 90 degrees: printed 5.10 in; R 1 in, T 1/2 in, 180 degrees: printed 3.925 in (3.14 for pi)
    expect(develop(bent(0.5 * INCH, 3 * INCH, 90), half).allowances[0]! / INCH).toBeCloseTo(5.1051, 4);
    expect(develop(bent(0.5 * INCH, INCH, 180), half).allowances[0]! / INCH).toBeCloseTo(3.927, 4);
  });

  it('aviation handbook formula: T .050, R .032, 90 degrees gives .085 and a deduction of .079 (printed workbook)', () => {
    const allowance = develop(bent(0.05 * INCH, 0.032 * INCH, 90), { name: 'aviation handbook' }).allowances[0]!;
    expect(allowance / INCH).toBeCloseTo(0.0853, 4);
    expect(deductionFrom(allowance, 0.032 * INCH, 0.05 * INCH, 90) / INCH).toBeCloseTo(0.0787, 4);
  });

  it('DIN 6935, metal-trades table book: opening angle 60, a 16, b 21, r 6, s 5: L 31.18 mm by the exact k', () => {
    // book: k 0.7 read from its diagram, v 5.77, L 31.23. By the formula: k = 0.65 + 0.5 lg 1.2 =
    // 0.689591, v = 22 - (2 pi / 3)(6 + 5 k / 2) = 22 - 2.0943951 x 7.7239766 = 5.822941
    const built = profilePart({ name: 'D1', thickness: 5, insideRadius: 6, width: 10, flanges: [16, 21], turns: [120] });
    if (!built.ok) throw new Error(built.failure.sentence);
    const { allowances } = develop(built.value, { name: 'DIN 6935' });
    const flats = 16 - 11 + (21 - 11);
    expect(flats + allowances[0]!).toBeCloseTo(37 - 5.822941, 5);
  });

  // v for opening angles 30, 60, 90, 120, 135 by the standard's formulas (derived table of the check values)
  it.each([
    [1, 1, [0.5312, 1.2249, 1.9187, 0.9219, 0.6162]],
    [2.5, 2, [0.6265, 2.3012, 3.9759, 1.8467, 1.2159]],
    [5, 2, [-1.3126, 1.7499, 4.8125, 1.9579, 1.2052]],
    [6, 3, [-0.8516, 2.9187, 6.6891, 2.8517, 1.8004]],
    [12, 2, [-6.0339, 0.7729, 7.5796, 2.5522, 1.3878]],
  ])('DIN 6935 deduction v, r %d, s %d', (r, s, expected) => {
    [30, 60, 90, 120, 135].forEach((opening, i) => {
      const allowance = develop(bent(s, r, 180 - opening), { name: 'DIN 6935' }).allowances[0]!;
      expect(deductionFrom(allowance, r, s, 180 - opening), `${opening}`).toBeCloseTo(expected[i]!, 4);
    });
  });

  it('closed hems follow the hem rule whatever the rule for bends; open ones the bends', () => {
    const hem = (insideRadius: number): Part => bent(2, insideRadius, 180);
    // outside lengths to the outer tangent less 0.43 t: a = 2 (r + t) - 0.86
    expect(develop(hem(0), { name: 'K-factor', k: 0.3 }).allowances[0]!).toBeCloseTo(4 - 0.86, 9);
    expect(develop(hem(0.1), { name: 'DIN 6935' }).allowances[0]!).toBeCloseTo(4.2 - 0.86, 9);
    expect(develop(hem(2), { name: 'K-factor', k: 0.5 }).allowances[0]!).toBeCloseTo(3 * Math.PI, 9);
  });

  it('says its rule', () => {
    expect(ruleInWords({ name: 'K-factor', k: 0.44 })).toBe('K-factor 0.44');
    expect(ruleInWords({ name: 'DIN 6935' })).toBe('DIN 6935');
  });
});

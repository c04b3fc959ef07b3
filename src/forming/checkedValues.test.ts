import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { airBendAtDepth, allowanceByRule, closedFormDepth, deductionFrom, depthSensitivity, linearHardeningBend, oehlerForce, textbookForce, toolRadiusByFactor } from './index.js';

// Published and derived values of CHECKS that the other files do not hold; docs/checked-values.md lists where each one is.

describe('flat length', () => {
  it("1.3 machinist's coefficients as K, DERIVED: coefficient over pi/2 is 0.3501, 0.4074, 0.4520", () => {
    for (const [group, k] of [['soft', 0.3501], ['medium', 0.4074], ['hard', 0.452]] as const) {
      // a radius of 0 leaves the coefficient alone
      expect(allowanceByRule({ name: 'machinist handbook', group }, 0, 1, 90) / (Math.PI / 2)).toBeCloseTo(k, 4);
    }
  });
  it('1.4 D2, SEEN de.scribd.com/document/74375167: legs 50 and 605, two bends of 7.71: 639.58; the full DIN formula gives 0.4 mm less each', () => {
    expect(50 + 605 - 2 * 7.71).toBeCloseTo(639.58, 10);
    const full = deductionFrom(allowanceByRule({ name: 'DIN 6935' }, 7, 3.18, 90), 7, 3.18, 90);
    expect(7.71 - full).toBeGreaterThan(0.39);
    expect(7.71 - full).toBeLessThan(0.41);
  });
  it('2 G7 Ghosh and Mallik, SEEN companion file: stock length 89.175 mm for legs of 50, neutral line at 0.45 t', () => {
    const { punchRadius } = linearHardeningBend(345, 517, 207e3, 0.2, 5, 25, 0.1);
    expect(100 - deductionFrom(allowanceByRule({ name: 'K-factor', k: 0.45 }, punchRadius, 5, 90), punchRadius, 5, 90)).toBeCloseTo(89.175, 2);
  });
});

describe('force rules scale as CHECKS 2 says, DERIVED', () => {
  it('with strength, thickness squared and 1/V; twice the thickness at the same V/t gives twice the force', () => {
    expect(textbookForce(800, 2, 16) / textbookForce(400, 2, 16)).toBeCloseTo(2, 12);
    expect(textbookForce(400, 4, 16) / textbookForce(400, 2, 16)).toBeCloseTo(4, 12);
    expect(textbookForce(400, 2, 8) / textbookForce(400, 2, 16)).toBeCloseTo(2, 12);
    for (const rule of [textbookForce, oehlerForce]) expect(rule(400, 4, 32) / rule(400, 2, 16)).toBeCloseTo(2, 12);
  });
  it('12, FE DERIVED: peak of the FE metal within -8 to +15 % of either rule with either V; as printed there', () => {
    // Rm 384.47, t 2: V 16 127.8, V 12 170.4; Oehler with tangent V 125.4, 176.4, with sharp V 144.2, 213.6
    expect(textbookForce(384.47, 2, 16)).toBeCloseTo(127.8, 1);
    expect(textbookForce(384.47, 2, 12)).toBeCloseTo(170.4, 1);
    expect(textbookForce(384.47, 2, 17.78)).toBeCloseTo(115, 0);
    expect(oehlerForce(384.47, 2, 17.78)).toBeCloseTo(125.4, 1);
    expect(oehlerForce(384.47, 2, 16)).toBeCloseTo(144.2, 1);
    expect(oehlerForce(384.47, 2, 12)).toBeCloseTo(213.6, 1);
  });
  it('2.5 shape of the force along the stroke, FE DERIVED: 75 % within 0.03 V, flat to 1 % from 0.16 to 0.25 V, 16 % down at 90 degrees (the finer mesh 3 % more)', () => {
    const metal = { ...metalById('dc01')!, curve: { kind: 'swift', k: 620, n: 0.18, e0: 0.0108 }, modulus: 210e3, poisson: 0.3 } as const;
    const at = (depth: number) => {
      const result = airBendAtDepth({ metal, thickness: 2, v: 16, vConvention: 'sharp', dieAngle: 84, shoulderRadius: 2, tipRadius: 1, friction: 0.1, depth });
      if (!result.ok) throw new Error(result.reason.sentence);
      return result.value;
    };
    const end = at(6.3);
    const share = (overV: number): number => at(overV * 16).forcePerLength / end.peakForcePerLength;
    expect(share(0.03)).toBeGreaterThan(0.75);
    expect(share(0.16)).toBeGreaterThan(0.985);
    // there the FE's mesh holds the force up (strip.test.ts): 0.99 in its curve, 0.982 here
    expect(share(0.25)).toBeGreaterThan(0.975);
    expect(share(0.2)).toBeGreaterThan(0.998);
    expect(1 - end.forcePerLength / end.peakForcePerLength).toBeGreaterThan(0.15);
    expect(1 - end.forcePerLength / end.peakForcePerLength).toBeLessThan(0.2);
  });
});

it('3.2 table-book factor: kR on the radius, rows SEEN Desfasurata (header ratios MEMORY), DC04 at r2/s = 40: 0.91', () => {
  // r1 = kR (r2 + s/2) - s/2 with r2 = 80, s = 2: 0.91 x 81 - 1
  expect(toolRadiusByFactor(0.91, 80, 2)).toBeCloseTo(72.71, 10);
});

describe('effect of thickness on the angle, CHECKS 9, DERIVED (V 16 tangent, rd 2, Ri 2.56, 90 degrees, Ri held)', () => {
  const vee = { v: 16, vConvention: 'tangent', dieAngle: 60, shoulderRadius: 2 } as const;
  it('depth changes by -0.414 mm per mm of thickness; +0.10 mm is 0.041 mm or 0.7 degree from touch, 0.141 mm or 2.4 degrees at a fixed tip', () => {
    const change = closedFormDepth(vee, 2.1, 2.56, 90) - closedFormDepth(vee, 2, 2.56, 90);
    expect(change / 0.1).toBeCloseTo(-0.414, 3);
    const perMm = depthSensitivity(vee, 2, 2.56, 90);
    expect(-change * perMm).toBeCloseTo(0.7, 1);
    expect((0.1 - change) * perMm).toBeCloseTo(2.4, 1);
  });
});

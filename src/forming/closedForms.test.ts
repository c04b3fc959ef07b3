import { describe, expect, it } from 'vitest';
import {
  allowanceByRule, allowanceFrom, bothOpenings, closedFormDepth, deductionFrom, dinK, gardinerRatio, halfOpening,
  kFactorOf, legReserve, linearHardeningForce, oehlerForce, radiusFromDepth, setback, springbackFactor, textbookForce, toolRadiusByFactor,
} from './index.js';

const aviation = { name: 'aviation handbook' } as const;
const half = { name: 'K-factor', k: 0.5 } as const;

describe('flat length (CHECKS 1.1, inches)', () => {
  it('F1 U-channel, FAA-H-8083-31A, SEEN: TDW 3.74 in within the chart rounding of 0.02; 3.7581 by the formula', () => {
    const ba = allowanceByRule(aviation, 0.16, 0.04, 90);
    const width = 1 + 2 + 1 - 4 * setback(0.16, 0.04, 90) + 2 * ba;
    expect(setback(0.16, 0.04, 90)).toBeCloseTo(0.2, 12);
    expect(Math.abs(width - 3.74)).toBeLessThan(0.02);
    expect(width).toBeCloseTo(3.7581, 4);
    expect(4 - 4 * 0.2 + 2 * allowanceByRule(half, 0.16, 0.04, 90)).toBeCloseTo(3.7655, 4);
  });
  it('F2 bend of 60 degrees, FAA chart 0.18204 in, SEEN', () => {
    expect(Math.abs(allowanceByRule(aviation, 0.156, 0.04, 60) / 0.18204 - 1)).toBeLessThan(2e-3);
  });
  it('F3 workbook, SEEN: allowance .085, deduction .079', () => {
    const ba = allowanceByRule(aviation, 0.032, 0.05, 90);
    expect(Math.abs(ba - 0.085)).toBeLessThan(0.0005);
    expect(Math.abs(deductionFrom(ba, 0.032, 0.05, 90) - 0.079)).toBeLessThan(0.0005);
  });
  it('F4, F5 NAVEDTRA 14119, SEEN: 5.10 and 3.925 in (the page cuts pi/2 and pi to 1.57 and 3.14)', () => {
    expect(Math.abs(allowanceByRule(half, 3, 0.5, 90) - 5.1)).toBeLessThan(0.01);
    expect(Math.abs(allowanceByRule(half, 1, 0.5, 180) - 3.925)).toBeLessThan(0.0025);
  });
  it('F6 a builder after AC 43.13, SEEN: .413 in', () => {
    expect(Math.abs(allowanceByRule(half, 0.25, 0.025, 90) - 0.413)).toBeLessThan(0.001);
    expect(allowanceByRule(aviation, 0.25, 0.025, 90)).toBeCloseTo(0.4097, 4);
  });
  it('F7, F8 DERIVED', () => {
    expect(allowanceByRule(half, 0.25, 0.028, 90)).toBeCloseTo(0.4147, 4);
    expect(allowanceByRule(aviation, 0.25, 0.028, 90)).toBeCloseTo(0.4118, 4);
    expect(allowanceByRule(half, 0.125, 0.064, 120)).toBeCloseTo(0.3288, 4);
    expect(allowanceByRule(aviation, 0.125, 0.064, 120)).toBeCloseTo(0.3214, 4);
  });
  it('the handbook is a constant K of 0.44691, with 0.01743 for pi/180', () => {
    expect((0.0078 * 180) / Math.PI).toBeCloseTo(0.44691, 5);
    expect(allowanceByRule(aviation, 2, 0, 90) / allowanceByRule(half, 2, 0, 90)).toBeCloseTo(0.01743 / 0.0174533, 5);
  });
  it("1.3 Machinery's Handbook is MEMORY: it warns, never fails", () => {
    const recalled = [['soft', 0.265, 0.230625, 0.9225], ['medium', 0.27625, 0.23625, 0.945], ['hard', 0.285, 0.240625, 0.9625]] as const;
    for (const [group, a, b, c] of recalled) {
      const rule = { name: 'machinist handbook', group } as const;
      const here = [[0.125, 0.125], [0.125, 0.0625], [0.5, 0.25]].map(([r, t]) => allowanceByRule(rule, r!, t!, 90));
      [a, b, c].forEach((value, i) => {
        if (Math.abs(here[i]! / value - 1) > 1e-4) console.warn(`MEMORY: machinist rule ${group}: ${here[i]} here, ${value} recalled`);
      });
    }
  });
  it('Kalpakjian eq. 16.2, SEEN: K 0.33 under R = 2T, 0.5 from there', () => {
    const rule = { name: 'textbook K' } as const;
    expect(allowanceByRule(rule, 1.9, 1, 90)).toBeCloseTo((Math.PI / 2) * 2.23, 12);
    expect(allowanceByRule(rule, 2.1, 1, 90)).toBeCloseTo((Math.PI / 2) * 2.6, 12);
  });
});

describe('DIN 6935 (CHECKS 1.4)', () => {
  const v = (r: number, s: number, included: number): number =>
    deductionFrom(allowanceByRule({ name: 'DIN 6935' }, r, s, 180 - included), r, s, 180 - included);
  it('D1, SEEN Desfasurata: k 0.7 from the diagram gives 5.77, L 31.23', () => {
    expect(dinK(6, 5)).toBeCloseTo(0.68959, 5);
    const drawn = deductionFrom(allowanceByRule({ name: 'K-factor', k: 0.35 }, 6, 5, 120), 6, 5, 120);
    expect(Math.abs(drawn - 5.77)).toBeLessThan(0.005);
    expect(16 + 21 - drawn).toBeCloseTo(31.23, 2);
    // by hand with k = 0.65 + 0.5 lg 1.2 = 0.6895906: 22 - 2.0943951 x (6 + 5 x 0.6895906/2) = 5.8229; CHECKS prints 5.8240
    expect(v(6, 5, 60)).toBeCloseTo(5.8229, 4);
  });
  // DERIVED table: r, s, k, v at 30, 60, 90, 120, 135 degrees included. Bends under 90 degrees included: to the outer tangents
  it.each([
    [1, 1, 0.65, [0.5312, 1.2249, 1.9187, 0.9219, 0.6162]],
    [1.5, 1.5, 0.65, [0.7967, 1.8374, 2.878, 1.3828, 0.9243]],
    [2, 2, 0.65, [1.0623, 2.4499, 3.8374, 1.8437, 1.2324]],
    [2.5, 2, 0.6985, [0.6265, 2.3012, 3.9759, 1.8467, 1.2159]],
    [3, 2, 0.738, [0.2138, 2.1711, 4.1283, 1.859, 1.2063]],
    [4, 2, 0.8005, [-0.5677, 1.9458, 4.4594, 1.9011, 1.2002]],
    [5, 2, 0.849, [-1.3126, 1.7499, 4.8125, 1.9579, 1.2052]],
    [2, 3, 0.562, [2.5572, 4.0458, 5.5343, 2.7964, 1.9093]],
    [4, 3, 0.7125, [0.7302, 3.3841, 6.0381, 2.775, 1.818]],
    [6, 3, 0.8005, [-0.8516, 2.9187, 6.6891, 2.8517, 1.8004]],
    [12, 2, 1, [-6.0339, 0.7729, 7.5796, 2.5522, 1.3878]],
  ] as const)('r %d s %d', (r, s, k, row) => {
    expect(dinK(r, s)).toBeCloseTo(k, 4);
    row.forEach((value, i) => expect(v(r, s, [30, 60, 90, 120, 135][i]!)).toBeCloseTo(value, 3));
  });
  it('r 10 s 2: CHECKS tabulates k = 1 at r/s = 5, where the formula gives 0.9995; the step is 0.0005', () => {
    expect(dinK(10, 2)).toBeCloseTo(0.9995, 4);
    [-4.7979, 0.9617, 6.7212, 2.3372, 1.3017].forEach((value, i) =>
      expect(Math.abs(v(10, 2, [30, 60, 90, 120, 135][i]!) - value)).toBeLessThan(0.0015));
  });
  it('both branches meet at 90 degrees', () => {
    expect(v(3, 2, 90.0001)).toBeCloseTo(v(3, 2, 90), 4);
  });
});

describe('units of the rules', () => {
  it('allowance and deduction and K are each other turned round', () => {
    for (const angle of [30, 90, 135]) {
      const a = allowanceByRule({ name: 'K-factor', k: 0.42 }, 2.1, 2, angle);
      expect(allowanceFrom(deductionFrom(a, 2.1, 2, angle), 2.1, 2, angle)).toBeCloseTo(a, 12);
      expect(kFactorOf(a, 2.1, 2, angle)).toBeCloseTo(0.42, 12);
    }
  });
});

describe('force rules (CHECKS 2)', () => {
  it("G1 Groover's figures: numbers MEMORY, arithmetic DERIVED 10 908.98 N", () => {
    expect(44.5 * textbookForce(450, 3.2, 25)).toBeCloseTo(10908.98, 1);
    expect(44.5 * textbookForce(450, 3.2, 25.4)).toBeCloseTo(10737.2, 1);
    const ab = allowanceByRule({ name: 'textbook K' }, 4.75, 3.2, 60);
    expect(ab).toBeCloseTo(6.08, 3);
    expect(38 + ab + 25).toBeCloseTo(69.08, 3);
  });
  it.each([
    ['G2', 310, 1, 10, 100, 4340, 4123], ['G3', 400, 2, 16, 1000, 150000, 133000], ['G4', 400, 3, 24, 1000, 225000, 199500],
    ['G5', 550, 6, 50, 1000, 586080, 526680],
  ] as const)('%s DERIVED', (_id, rm, t, v, length, oehler, textbook) => {
    expect(length * oehlerForce(rm, t, v)).toBeCloseTo(oehler, 1);
    expect(length * textbookForce(rm, t, v)).toBeCloseTo(textbook, 1);
  });
  it('G6 Asadzadeh et al. 2021, DERIVED: 112.4995 and 211.492 N/mm', () => {
    expect(linearHardeningForce(210e3, 0, 300, 2, 16, 2.5)).toBeCloseTo(112.4995, 4);
    expect(linearHardeningForce(210e3, 1000, 300, 2, 16, 2.5)).toBeCloseTo(211.492, 3);
  });
});

describe('springback of the arc (CHECKS 3.1, 3.2)', () => {
  it.each([
    [0.5, 40e3, 29e6, 0.0359, 0.942397, 0.53056, 95.311], [2.5, 275, 210e3, 2, 0.995089, 2.5123, 90.317],
    [10, 275, 210e3, 2, 0.980358, 10.2004, 91.639], [50, 300, 210e3, 2, 0.893039, 55.9886, 100.568],
    [5, 250, 70e3, 2, 0.973217, 5.1376, 92.064], [3, 230, 200e3, 1.5, 0.9931, 3.0208, 90.5],
  ] as const)('Gardiner Ri %d, released radius and the angle to form for 90 degrees by Kalpakjian', (ri, y, e, t, ratio, rf, form) => {
    expect(gardinerRatio(ri, y, e, t)).toBeCloseTo(ratio, 6);
    expect(Math.abs(ri / gardinerRatio(ri, y, e, t) - rf)).toBeLessThan(6e-5);
    expect(90 / springbackFactor(ri, rf, t)).toBeCloseTo(form, 2);
  });
  it('the cubic against an elastic-plastic beam integrated by fibres (R 50, t 2, Y 300, E 210e3: 0.89303936)', () => {
    const fibres = 200000;
    let moment = 0;
    for (let i = 0; i < fibres; i++) {
      const z = (2 * (i + 0.5)) / fibres - 1;
      moment += Math.max(-300, Math.min(300, (210e3 * z) / 50)) * z * (2 / fibres);
    }
    // released curvature = 1/R - M/EI per unit width
    expect(1 - (moment / (210e3 * (8 / 12))) * 50).toBeCloseTo(0.89303936, 7);
    expect(gardinerRatio(50, 300, 210e3, 2)).toBeCloseTo(0.89303936, 8);
  });
  it('table-book factor, SEEN: r1 = kR (r2 + s/2) - s/2', () => {
    expect(toolRadiusByFactor(0.9, 4, 2)).toBeCloseTo(3.5, 12);
  });
});

describe('penetration (CHECKS 5)', () => {
  // tangent convention: V, t, rd, Ri, then s at 150, 135, ..., 30 degrees included
  const tangent: readonly (readonly number[])[] = [
    [8, 1, 1, 1.28, 0.9561, 1.3866, 1.802, 2.215, 2.6414, 3.1049, 3.6482, 4.3658, 5.5353],
    [12, 1, 1.5, 1.92, 1.4518, 2.1211, 2.7803, 3.4527, 4.1692, 4.9787, 5.9723, 7.3553, 9.7347],
    [12, 1.5, 1.5, 1.92, 1.4341, 2.0799, 2.703, 3.3224, 3.9621, 4.6574, 5.4723, 6.5487, 8.3029],
    [16, 1.5, 2, 2.56, 1.9298, 2.8144, 3.6813, 4.5602, 5.4899, 6.5312, 7.7964, 9.5382, 12.5024],
    [16, 2, 2, 2.56, 1.9122, 2.7732, 3.604, 4.4299, 5.2828, 6.2098, 7.2964, 8.7316, 11.0705],
    [20, 2.5, 2, 3.2, 2.4079, 3.5077, 4.5823, 5.6676, 6.8106, 8.0836, 9.6205, 11.7211, 15.27],
    [24, 3, 2.5, 3.84, 2.8859, 4.201, 5.4833, 6.7751, 8.1312, 9.6361, 11.4446, 13.904, 18.0376],
    [32, 4, 3, 5.12, 3.8596, 5.6288, 7.3626, 9.1203, 10.9797, 13.0623, 15.5928, 19.0763, 25.0047],
    [40, 5, 4, 6.4, 4.8157, 7.0154, 9.1646, 11.3353, 13.6211, 16.1672, 19.241, 23.4421, 30.54],
    [50, 6, 5, 8, 6.0285, 8.7899, 11.4944, 14.2342, 17.1299, 20.3697, 24.3013, 29.7059, 38.8909],
  ];
  it.each(tangent.map((row) => [row[0]!, row] as const))('tangent V %d', (v, row) => {
    const vee = { v, vConvention: 'tangent', dieAngle: 30, shoulderRadius: row[2]! } as const;
    [150, 135, 120, 105, 90, 75, 60, 45, 30].forEach((included, i) =>
      expect(closedFormDepth(vee, row[1]!, row[3]!, 180 - included)).toBeCloseTo(row[4 + i]!, 4));
  });
  // sharp convention, die 84 degrees: V, t, rd, Ri, c, s at 150 ... 90
  it.each([
    [8, 1, 1, 1.28, 4.44523, [1.0754, 1.571, 2.059, 2.5566, 3.0866]],
    [12, 1.5, 1.5, 1.92, 6.66784, [1.6131, 2.3565, 3.0886, 3.8349, 4.6299]],
    [16, 2, 2, 2.56, 8.89046, [2.1508, 3.1421, 4.1181, 5.1132, 6.1732]],
    [24, 3, 2.5, 3.84, 13.11307, [3.1842, 4.6621, 6.1259, 7.6292, 9.2443]],
    [32, 4, 3, 5.12, 17.33569, [4.2175, 6.1821, 8.1338, 10.1452, 12.3154]],
    [50, 6, 5, 8, 27.22614, [6.625, 9.712, 12.7797, 15.9424, 19.3561]],
  ] as const)('sharp V %d', (v, t, rd, ri, c, row) => {
    const vee = { v, vConvention: 'sharp', dieAngle: 84, shoulderRadius: rd } as const;
    expect(halfOpening(vee)).toBeCloseTo(c, 5);
    expect(bothOpenings(vee).sharp).toBeCloseTo(v, 12);
    [150, 135, 120, 105, 90].forEach((included, i) =>
      expect(closedFormDepth(vee, t, ri, 180 - included)).toBeCloseTo(row[i]!, 4));
  });
  it('the naive twin: an outline of chords lowered by bisection until it touches the shoulder', () => {
    let worst = 0;
    for (const vConvention of ['sharp', 'tangent'] as const)
      for (const v of [8, 16, 24, 50])
        for (const t of [1, 2, 3, 6].filter((x) => x <= v / 4))
          for (const included of [30, 45, 60, 75, 90, 105, 120, 135, 150]) {
            const vee = { v, vConvention, dieAngle: 84, shoulderRadius: v / 8 };
            const ri = 0.16 * v;
            if (legReserve(vee, t, ri, 180 - included) < 0) continue;
            worst = Math.max(worst, Math.abs(lowered(vee, t, ri, included) - closedFormDepth(vee, t, ri, 180 - included)));
          }
    expect(worst).toBeLessThan(1e-6);
  });
  it('the radius comes back from the depth', () => {
    const vee = { v: 16, vConvention: 'sharp', dieAngle: 84, shoulderRadius: 2 } as const;
    expect(radiusFromDepth(vee, 2, closedFormDepth(vee, 2, 2.13, 89), 89)).toBeCloseTo(2.13, 10);
  });
  it('17.0 degrees per mm (V 16, t 2, rd 2, Ri 2.56 at 90 degrees, DERIVED)', () => {
    const vee = { v: 16, vConvention: 'tangent', dieAngle: 30, shoulderRadius: 2 } as const;
    const slope = 0.02 / (closedFormDepth(vee, 2, 2.56, 90.01) - closedFormDepth(vee, 2, 2.56, 89.99));
    expect(slope).toBeCloseTo(17.0, 1);
  });
});

/** Depth at which the outline of arc and leg, built of points, touches the shoulder's circle. */
const lowered = (
  vee: { v: number; vConvention: 'sharp' | 'tangent'; dieAngle: number; shoulderRadius: number },
  t: number, ri: number, included: number,
): number => {
  const b = ((180 - included) / 2 / 180) * Math.PI;
  const rd = vee.shoulderRadius;
  const centre = [halfOpening(vee), -rd] as const;
  // outer face relative to the arc's centre: the arc's end, then straight on
  const from = [(ri + t) * Math.sin(b), -(ri + t) * Math.cos(b)] as const;
  const distance = (yc: number): number => {
    const [dx, dy] = [centre[0] - from[0], centre[1] - (from[1] + yc)];
    const along = Math.max(0, dx * Math.cos(b) + dy * Math.sin(b));
    let least = Math.hypot(dx - along * Math.cos(b), dy - along * Math.sin(b));
    for (let i = 0; i <= 100; i++) {
      const a = (b * i) / 100;
      least = Math.min(least, Math.hypot(centre[0] - (ri + t) * Math.sin(a), centre[1] - yc + (ri + t) * Math.cos(a)));
    }
    return least;
  };
  // above, the sheet is clear of the shoulder; come down to the first touch
  let high = 4 * vee.v;
  let low = high;
  while (distance(low) > rd && low > -4 * vee.v) low -= 0.05 * vee.v;
  high = low + 0.05 * vee.v;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (distance(middle) > rd) high = middle;
    else low = middle;
  }
  return t - (high - ri);
};

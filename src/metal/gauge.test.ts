import { describe, expect, it } from 'vitest';
import { gaugesOf, gaugeThickness } from './index.js';

// CHECKS 8, printed figures: gauge; Manufacturers' Standard in, mm (craginmetals table 4-28; 29 and 30 from the formula);
// galvanised in, mm (the same table 10-30; 8 and 9 from the formula); US Standard in, mm (15 U.S.C. 206, kortick 22-30);
// Brown and Sharpe in, mm (unc.edu wire gauge table). An inch to four figures is good to 0.00005 (0.5 of the last
// figure), the millimetres beside it to 0.0013 + 0.0005.
type Row = readonly [number, number, number, number | null, number | null, number, number, number, number];
const published: readonly Row[] = [
  [3, 0.2391, 6.073, null, null, 0.25, 6.3500, 0.2294, 5.827],
  [4, 0.2242, 5.695, null, null, 0.234375, 5.9531, 0.2043, 5.189],
  [5, 0.2092, 5.314, null, null, 0.21875, 5.5562, 0.1819, 4.621],
  [6, 0.1943, 4.935, null, null, 0.203125, 5.1594, 0.1620, 4.115],
  [7, 0.1793, 4.554, null, null, 0.1875, 4.7625, 0.1443, 3.665],
  [8, 0.1644, 4.176, 0.1681, 4.270, 0.171875, 4.3656, 0.1285, 3.264],
  [9, 0.1495, 3.797, 0.1532, 3.891, 0.15625, 3.9688, 0.1144, 2.906],
  [10, 0.1345, 3.416, 0.1382, 3.510, 0.140625, 3.5719, 0.1019, 2.588],
  [11, 0.1196, 3.038, 0.1233, 3.132, 0.125, 3.1750, 0.0907, 2.305],
  [12, 0.1046, 2.657, 0.1084, 2.753, 0.109375, 2.7781, 0.0808, 2.053],
  [13, 0.0897, 2.278, 0.0934, 2.372, 0.09375, 2.3812, 0.0720, 1.828],
  [14, 0.0747, 1.897, 0.0785, 1.994, 0.078125, 1.9844, 0.0641, 1.628],
  [15, 0.0673, 1.709, 0.0710, 1.803, 0.0703125, 1.7859, 0.0571, 1.450],
  [16, 0.0598, 1.519, 0.0635, 1.613, 0.0625, 1.5875, 0.0508, 1.291],
  [17, 0.0538, 1.367, 0.0575, 1.460, 0.05625, 1.4287, 0.0453, 1.150],
  [18, 0.0478, 1.214, 0.0516, 1.311, 0.05, 1.2700, 0.0403, 1.024],
  [19, 0.0418, 1.062, 0.0456, 1.158, 0.04375, 1.1112, 0.0359, 0.912],
  [20, 0.0359, 0.912, 0.0396, 1.006, 0.0375, 0.9525, 0.0320, 0.812],
  [21, 0.0329, 0.836, 0.0366, 0.930, 0.034375, 0.8731, 0.0285, 0.723],
  [22, 0.0299, 0.759, 0.0336, 0.853, 0.03125, 0.7937, 0.0253, 0.644],
  [23, 0.0269, 0.683, 0.0306, 0.777, 0.028125, 0.7144, 0.0226, 0.573],
  [24, 0.0239, 0.607, 0.0276, 0.701, 0.025, 0.6350, 0.0201, 0.511],
  [25, 0.0209, 0.531, 0.0247, 0.627, 0.021875, 0.5556, 0.0179, 0.455],
  [26, 0.0179, 0.455, 0.0217, 0.551, 0.01875, 0.4762, 0.0159, 0.405],
  [27, 0.0164, 0.417, 0.0202, 0.513, 0.0171875, 0.4366, 0.0142, 0.361],
  [28, 0.0149, 0.378, 0.0187, 0.475, 0.015625, 0.3969, 0.0126, 0.321],
  [29, 0.0135, 0.343, 0.0172, 0.437, 0.0140625, 0.3572, 0.0113, 0.286],
  [30, 0.0120, 0.305, 0.0157, 0.399, 0.0125, 0.3175, 0.0100, 0.255],
];

describe('gauge numbers (CHECKS 8)', () => {
  it.each(published)('gauge %i', (gauge, msg, msgMm, galvanised, galvanisedMm, us, usMm, bs, bsMm) => {
    const of = (system: Parameters<typeof gaugeThickness>[0]): number => gaugeThickness(system, gauge)!.thickness;
    expect(Math.abs(of('manufacturers standard') / 25.4 - msg)).toBeLessThanOrEqual(0.0000501);
    expect(Math.abs(of('manufacturers standard') - msgMm)).toBeLessThanOrEqual(0.0019);
    if (galvanised === null || galvanisedMm === null) expect(gaugeThickness('galvanised', gauge)).toBeNull();
    else {
      expect(Math.abs(of('galvanised') / 25.4 - galvanised)).toBeLessThanOrEqual(0.0000501);
      expect(Math.abs(of('galvanised') - galvanisedMm)).toBeLessThanOrEqual(0.0019);
    }
    expect(of('us standard') / 25.4).toBeCloseTo(us, 7);
    expect(Math.abs(of('us standard') - usMm)).toBeLessThanOrEqual(0.0000501);
    expect(Math.abs(of('brown and sharpe') / 25.4 - bs)).toBeLessThanOrEqual(0.0000501);
    expect(Math.abs(of('brown and sharpe') - bsMm)).toBeLessThanOrEqual(0.0019);
  });

  it('has no thickness outside its tables', () => {
    expect(gaugeThickness('us standard', 2)).toBeNull();
    expect(gaugeThickness('us standard', 31)).toBeNull();
    expect(gaugeThickness('us standard', 10.5)).toBeNull();
    expect(gaugesOf('galvanised')).toHaveLength(23);
  });

  it('the formulas in five figures, DERIVED: statutory ounces/16/41.82, galvanised 2.5 ounces more, inches', () => {
    const derived: readonly (readonly [number, number, number | null])[] = [
      [3, 0.23912, null], [4, 0.22418, null], [5, 0.20923, null], [6, 0.19429, null], [7, 0.17934, null], [8, 0.1644, 0.16813],
      [9, 0.14945, 0.15319], [10, 0.13451, 0.13824], [11, 0.11956, 0.1233], [12, 0.10462, 0.10835], [13, 0.08967, 0.09341], [14, 0.07473, 0.07846],
      [15, 0.06725, 0.07099], [16, 0.05978, 0.06352], [17, 0.0538, 0.05754], [18, 0.04782, 0.05156], [19, 0.04185, 0.04558], [20, 0.03587, 0.0396],
      [21, 0.03288, 0.03662], [22, 0.02989, 0.03363], [23, 0.0269, 0.03064], [24, 0.02391, 0.02765], [25, 0.02092, 0.02466], [26, 0.01793, 0.02167],
      [27, 0.01644, 0.02018], [28, 0.01495, 0.01868], [29, 0.01345, 0.01719], [30, 0.01196, 0.01569],
    ];
    for (const [gauge, msg, galvanised] of derived) {
      expect(Math.abs(gaugeThickness('manufacturers standard', gauge)!.thickness / 25.4 - msg)).toBeLessThanOrEqual(0.00000501);
      if (galvanised !== null) expect(Math.abs(gaugeThickness('galvanised', gauge)!.thickness / 25.4 - galvanised)).toBeLessThanOrEqual(0.00000501);
    }
  });
});

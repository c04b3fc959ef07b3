import { describe, expect, it } from 'vitest';
import { type VBend, contactReach, depthAt, insideRadiusAt, tipAt, wingsAt } from './vBend.js';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

/** Any place for the neutral line: the depth at the final angle does not depend on it. */
const NEUTRAL_SHARE = 0.44;

/** A bend whose inside radius is `ri` at its final bend angle. */
const bendOf = (c: number, t: number, rd: number, ri: number, bendAngle: number): VBend => ({
  kind: 'V', beside: 0,
  allowance: rad(bendAngle) * (ri + NEUTRAL_SHARE * t), neutral: NEUTRAL_SHARE * t, thickness: t,
  halfOpening: c, shoulderRadius: rd, bendAngle, bendAngleUnderLoad: bendAngle,
});

/**
 * Depth of the inner apex, mm, by included angle: closed form s = c tan b - (Ri + t + rd)(1/cos b - 1), derived for these
 * checks and confirmed there by construction (a 600-chord arc and a straight leg lowered by bisection until the die's shoulder is
 * touched; 240 cases, worst difference 2.1e-14 mm). Values to four digits. No tool is meant by them.
 */
const INCLUDED = [150, 135, 120, 105, 90, 75, 60, 45, 30];
const TANGENT: readonly (readonly [v: number, t: number, rd: number, ri: number, depths: readonly number[]])[] = [
  [8, 1, 1, 1.28, [0.9561, 1.3866, 1.802, 2.215, 2.6414, 3.1049, 3.6482, 4.3658, 5.5353]],
  [12, 1, 1.5, 1.92, [1.4518, 2.1211, 2.7803, 3.4527, 4.1692, 4.9787, 5.9723, 7.3553, 9.7347]],
  [12, 1.5, 1.5, 1.92, [1.4341, 2.0799, 2.703, 3.3224, 3.9621, 4.6574, 5.4723, 6.5487, 8.3029]],
  [16, 2, 2, 2.56, [1.9122, 2.7732, 3.604, 4.4299, 5.2828, 6.2098, 7.2964, 8.7316, 11.0705]],
  [24, 3, 2.5, 3.84, [2.8859, 4.201, 5.4833, 6.7751, 8.1312, 9.6361, 11.4446, 13.904, 18.0376]],
  [50, 6, 5, 8, [6.0285, 8.7899, 11.4944, 14.2342, 17.1299, 20.3697, 24.3013, 29.7059, 38.8909]],
];
/** Sharp convention, die of 84 degrees included: only angles from there up are free air bending. `c` as listed. */
const SHARP: readonly (readonly [c: number, t: number, rd: number, ri: number, depths: readonly number[]])[] = [
  [4.44523, 1, 1, 1.28, [1.0754, 1.571, 2.059, 2.5566, 3.0866]],
  [6.66784, 1.5, 1.5, 1.92, [1.6131, 2.3565, 3.0886, 3.8349, 4.6299]],
  [8.89046, 2, 2, 2.56, [2.1508, 3.1421, 4.1181, 5.1132, 6.1732]],
  [13.11307, 3, 2.5, 3.84, [3.1842, 4.6621, 6.1259, 7.6292, 9.2443]],
  [17.33569, 4, 3, 5.12, [4.2175, 6.1821, 8.1338, 10.1452, 12.3154]],
  [27.22614, 6, 5, 8, [6.625, 9.712, 12.7797, 15.9424, 19.3561]],
];

describe('depthAt and tipAt', () => {
  it.each(TANGENT)('tangent convention, V %d, t %d, rd %d, Ri %d', (v, t, rd, ri, depths) => {
    depths.forEach((depth, i) => {
      const bend = bendOf(v / 2, t, rd, ri, 180 - INCLUDED[i]!);
      expect(insideRadiusAt(bend, bend.bendAngle)).toBeCloseTo(ri, 9);
      expect(Math.abs(depthAt(bend, bend.bendAngle) - depth), `${INCLUDED[i]} degrees included`).toBeLessThan(0.5001e-4);
      expect(Math.abs(tipAt(bend, bend.bendAngle) - (t - depth))).toBeLessThan(0.5001e-4);
    });
  });

  it.each(SHARP)('sharp convention, half opening %d, t %d, rd %d, Ri %d', (c, t, rd, ri, depths) => {
    depths.forEach((depth, i) => {
      const bend = bendOf(c, t, rd, ri, 180 - INCLUDED[i]!);
      // the half opening is listed to five digits: up to 0.5e-5 x tan 45 more
      expect(Math.abs(depthAt(bend, bend.bendAngle) - depth), `${INCLUDED[i]} degrees included`).toBeLessThan(0.56e-4);
    });
  });

  it('towards flat: the depth goes as b (c - a / 4), and is 0 at 0', () => {
    const bend = bendOf(8, 2, 2, 2.56, 90);
    expect(depthAt(bend, 0)).toBe(0);
    expect(tipAt(bend, 0)).toBe(2);
    // tan b -> b and (Ri + t + rd) tan(b / 2) -> (a / 2b)(b / 2) = a / 4; the rest is smaller by a factor of b
    for (const x of [1e-2, 1e-4, 1e-6, 1e-8]) {
      const b = rad(x) / 2;
      expect(depthAt(bend, x) / (b * (8 - bend.allowance / 4)), `${x} degrees`).toBeCloseTo(1, 3);
    }
  });

  it('goes down all the way to the final angle', () => {
    for (const [v, t, rd, ri] of TANGENT) {
      const bend = bendOf(v / 2, t, rd, ri, 120);
      for (let x = 1; x <= 120; x++) expect(depthAt(bend, x)).toBeGreaterThan(depthAt(bend, x - 1));
    }
  });
});

describe('wingsAt', () => {
  it('flat: the middle of the strip over the bending plane, the middle plane half the thickness up', () => {
    const bend = bendOf(8, 2, 2, 2.56, 90);
    const { gauge, front } = wingsAt(bend, 0);
    expect(gauge).toEqual({ c: 1, s: 0, x: bend.allowance / 2, y: 1 });
    expect(front).toEqual({ c: 1, s: 0, x: -bend.allowance / 2, y: 1 });
  });

  it.each([1e-3, 1e-5, 1e-7, 1.1e-9])('almost flat, %d degrees, is almost there: no jump and no noise', (x) => {
    const bend = bendOf(8, 2, 2, 2.56, 90);
    const { gauge } = wingsAt(bend, x);
    // up changes as the depth does: b (c - a / 4) and less
    const slope = rad(x) / 2;
    expect(Math.abs(gauge.x - bend.allowance / 2)).toBeLessThanOrEqual(slope * 2 + 1e-9);
    expect(Math.abs(gauge.y - 1)).toBeLessThanOrEqual(slope * 8 + 1e-9);
  });

  it('at 90 degrees by hand: V 16 tangent, t 2, rd 2, Ri 2.56', () => {
    const bend = bendOf(8, 2, 2, 2.56, 90);
    const { gauge, front } = wingsAt(bend, 90);
    // middle radius 3.56, centre up = 2 - 5.2828 + 2.56; both times 1 / sqrt 2 off the centre
    const off = 3.56 * Math.SQRT1_2;
    expect(gauge.x).toBeCloseTo(off, 9);
    expect(Math.abs(gauge.y - (2 - 5.2828 + 2.56 - off))).toBeLessThan(0.5001e-4);
    expect([gauge.c, gauge.s].map((n) => n.toFixed(9))).toEqual(Array(2).fill(Math.SQRT1_2.toFixed(9)));
    expect(front).toEqual({ c: gauge.c, s: -gauge.s, x: -gauge.x, y: gauge.y });
  });

  it.each(TANGENT)('at every angle the outer face touches the shoulder arc and the wing leaves the arc tangent: V %d, t %d, rd %d, Ri %d', (v, t, rd, ri) => {
    const bend = bendOf(v / 2, t, rd, ri, 90);
    for (let x = 1; x <= 100; x += 3) {
      for (const [side, { c, s, x: back, y: up }] of [[1, wingsAt(bend, x).gauge], [-1, wingsAt(bend, x).front]] as const) {
        expect(Math.hypot(c, s)).toBeCloseTo(1, 12);
        // height of the shoulder arc's centre over the wing's middle plane: its outer face lies t / 2 under that
        const over = -s * (side * bend.halfOpening - back) + c * (-rd - up);
        expect(-over - t / 2, `${x} degrees`).toBeCloseTo(rd, 9);
        // square to the wing at its tangent line, the arc's centre: on the bending plane, the inside radius over the tip
        const middle = insideRadiusAt(bend, x) + t / 2;
        expect(back - s * middle).toBeCloseTo(0, 8);
        expect(up + c * middle).toBeCloseTo(tipAt(bend, x) + insideRadiusAt(bend, x), 8);
        // the flat length is kept: neutral radius x angle
        expect((insideRadiusAt(bend, x) + bend.neutral) * rad(x)).toBeCloseTo(bend.allowance, 9);
      }
    }
  });

  it('contact reaches over the shoulder arc by its radius and the sheet', () => {
    expect(contactReach(bendOf(8, 2, 2, 2.56, 90))).toBe(12);
  });
});

import { describe, expect, it } from 'vitest';
import {
  beamDeflection, crowningFor, cylinderForces, depthSensitivity, forceFromMoment, legRelease, leverArm, linearHardeningBend, plateBeam,
  planeStrainArc,
} from './index.js';

describe('beams (CHECKS 6, DERIVED, checked there against unit-load integration)', () => {
  it.each([
    [60, 800, 3000, 1e6, 3000, 0.65395, 0.11607], [60, 800, 3000, 1e6, 1500, 0.93188, 0.17411],
    [60, 800, 3000, 1e6, 0, 1.04632, 0.23214], [120, 1200, 4000, 2e6, 4000, 0.45929, 0.10317],
  ] as const)('%d x %d on %d mm, %d N over %d mm', (width, height, span, force, loaded, bending, shear) => {
    const d = beamDeflection(plateBeam(width, height, span), { force, from: -loaded / 2, to: loaded / 2 }, 0);
    expect(d.bending).toBeCloseTo(bending, 5);
    expect(d.shear).toBeCloseTo(shear, 5);
    expect(d.total).toBeCloseTo(bending + shear, 4);
  });
  it.each([[1500, 0.336], [2000, 0.5037], [3000, 0.77]] as const)('centre less workpiece end over %d mm: %d mm', (loaded, needed) => {
    const stiff = plateBeam(1e9, 800, 3000);
    const crowning = crowningFor(plateBeam(60, 800, 3000), stiff, { force: 1e6, from: -loaded / 2, to: loaded / 2 }, null);
    expect(crowning.uncrowned).toBeCloseTo(needed, 4);
    expect(crowning.residual).toBeCloseTo(crowning.uncrowned, 6);
  });
  it('the naive twin: statics and double integration of M/EI and Q/GA by steps, loads and places beyond the supports too', () => {
    const beam = plateBeam(60, 800, 3000);
    for (const [from, to] of [[-300, 900], [-1500, 1500], [1200, 1900], [-2000, -1600]] as const)
      for (const at of [-1800, -700, 0, 400, 1700]) {
        const load = { force: 5e5, from, to };
        expect(Math.abs(beamDeflection(beam, load, at).total - stepped(beam, load, at))).toBeLessThan(2e-4);
      }
  });
  it('a device of the right shape leaves nothing; a parabola leaves a little; off the middle too', () => {
    const beam = plateBeam(60, 2000, 3000);
    const load = { force: 1e6, from: -1500, to: 1500 };
    const right = crowningFor(beam, beam, load, { shape: 'evenly loaded beam', length: 3000 });
    const parabola = crowningFor(beam, beam, load, { shape: 'parabola', length: 3000 });
    // shear follows a parabola, bending the quartic: with a 2 m high plate neither fits alone, both fit to a few percent
    expect(right.residual).toBeLessThan(0.04 * right.uncrowned);
    expect(parabola.residual).toBeLessThan(0.04 * parabola.uncrowned);
    expect(right.setting / right.uncrowned).toBeCloseTo(1, 1);
    const aside = crowningFor(beam, beam, { force: 4e5, from: 200, to: 1200 }, { shape: 'parabola', length: 3000 });
    expect(aside.residual).toBeLessThan(aside.uncrowned);
  });
});

describe('two cylinders (CHECKS 6, statics)', () => {
  it.each([
    [600, 250, 241.176, 358.824], [600, -775, 482.353, 117.647], [400, 1300, -3.92, 403.92],
  ] as const)('%d kN at %d mm', (force, at, left, right) => {
    const f = cylinderForces(force * 1e3, at, 2550);
    expect(Math.abs(f.left / 1e3 - left)).toBeLessThan(0.005);
    expect(Math.abs(f.right / 1e3 - right)).toBeLessThan(0.005);
    expect(f.levered).toBe(at === 1300);
  });
  it('at a quarter of the spacing only two thirds of the rating may be used', () => {
    const rated = 1e6;
    expect(cylinderForces((2 / 3) * rated, 2550 / 4, 2550).right).toBeCloseTo(rated / 2, 6);
  });
});

describe('statics of the leg (CHECKS 2.5, 3.4)', () => {
  const vee = { v: 16, vConvention: 'sharp', dieAngle: 84, shoulderRadius: 2 } as const;
  it('flat: F = 2 M/c, with M of the plastic section 1.155 sigma t^2/V', () => {
    const flat = { v: 16, vConvention: 'tangent', dieAngle: 84, shoulderRadius: 2 } as const;
    const m = ((2 / Math.sqrt(3)) * 400 * 4) / 4;
    expect(forceFromMoment(m, flat, 2, 2, 0, 0)).toBeCloseTo((1.1547 * 400 * 4) / 16, 2);
  });
  it.each([
    ['d30', 16, 0.1, 128.9, 134.6, 3.7, 1.69], ['d45', 16, 0.1, 124.9, 113.04, 2.29, 1.81], ['e55', 16, 0.1, 116.8, 100.1, 1.82, 1.91],
    ['h63', 16, 0.1, 108.9, 90.63, 1.59, 2.01], ['d63mu0', 16, 0, 101.8, 90.53, 1.6, 2.07], ['e63rp2', 16, 0.1, 113.6, 88.38, 1.87, 2.12],
    ['e48V12', 12, 0.1, 160.6, 86.57, 1.03, 1.51],
  ] as const)('springback from the released forces of run %s', (_name, v, friction, force, included, ri, springback) => {
    const b = ((180 - included) / 360) * Math.PI;
    const normal = force / 2 / (Math.cos(b) + friction * Math.sin(b));
    const arm = leverArm({ ...vee, v }, 2, ri, 180 - included);
    // the table's own roundings: 0.005 of springback and as much again from the rounded radius and angle
    expect(Math.abs(legRelease(normal, arm, 2, 210e3, 0.3) - springback)).toBeLessThan(0.011);
  });
  it('17.0 degrees per mm at V 16, t 2, rd 2, Ri 2.56, 90 degrees (CHECKS 5)', () => {
    expect(depthSensitivity({ ...vee, vConvention: 'tangent' }, 2, 2.56, 90)).toBeCloseTo(17.0, 1);
  });
});

describe('the arc alone in plane strain (CHECKS 3.3, DERIVED; t 2, K 620, n .18, e0 .0108, E 210e3, nu .3)', () => {
  const metal = { curve: { kind: 'swift', k: 620, n: 0.18, e0: 0.0108 }, modulus: 210e3, poisson: 0.3 } as const;
  it.each([
    [1.5, 576.8, 0.003749, 0.844, 1.5237], [2, 558.2, 0.003628, 0.98, 2.033], [2.5, 543.2, 0.003531, 1.112, 2.5438],
    [3, 530.7, 0.003449, 1.242, 3.056], [4, 510.7, 0.00332, 1.494, 4.0844], [6, 482.6, 0.003137, 1.976, 6.1572],
    [10, 448.7, 0.002916, 2.887, 10.3646], [20, 407.3, 0.002648, 5.004, 21.2363], [40, 373.3, 0.002426, 8.954, 44.5295],
  ] as const)('Ri %d', (ri, moment, change, springback, released) => {
    const arc = planeStrainArc(metal, ri, 2, 90);
    expect(Math.abs(arc.moment - moment)).toBeLessThan(0.06);
    expect(Math.abs(arc.curvatureChange - change)).toBeLessThan(6e-7);
    expect(Math.abs(arc.springback - springback)).toBeLessThan(6e-4);
    expect(Math.abs(arc.releasedRadius / released - 1)).toBeLessThan(1e-4);
  });
});

it('G7 Ghosh and Mallik, sample problem 9, SEEN as a companion file: 4144 N, punch angle 88.68 degrees (CHECKS 2)', () => {
  const bend = linearHardeningBend(345, 517, 207e3, 0.2, 5, 25, 0.1);
  expect(bend.punchRadius).toBeCloseTo(10.1556, 4);
  expect(bend.moment).toBeCloseTo(2583.99, 2);
  expect(bend.force).toBeCloseTo(207.23, 2);
  expect(Math.floor(20 * bend.force)).toBe(4144);
  expect(bend.punchAngle).toBeCloseTo(88.68, 2);
});

/** Deflection by stepping the beam's differential equations from support to support. */
const stepped = (
  beam: ReturnType<typeof plateBeam>, load: { force: number; from: number; to: number }, at: number,
): number => {
  const [l, ei] = [beam.span, beam.modulus * beam.inertia];
  const ga = (beam.shearCoefficient * beam.area * beam.modulus) / (2 * (1 + beam.poisson));
  const [a, b] = [load.from + l / 2, load.to + l / 2];
  const right = (load.force * (a + b)) / 2 / l;
  const left = load.force - right;
  const from = -l;
  const n = 60000;
  const dx = (3 * l) / n;
  const y: number[] = [0];
  let slope = 0;
  let value = 0;
  for (let i = 0; i < n; i++) {
    const x = from + (i + 0.5) * dx;
    const applied = load.force * Math.min(1, Math.max(0, (x - a) / (b - a)));
    const shear = (x > 0 ? left : 0) + (x > l ? right : 0) - applied;
    const over = x > a ? (x < b ? ((x - a) ** 2 / 2) * (load.force / (b - a)) : load.force * (x - (a + b) / 2)) : 0;
    const moment = Math.max(0, x) * left + Math.max(0, x - l) * right - over;
    slope -= (moment / ei) * dx;
    value += (slope + shear / ga) * dx;
    y.push(value);
  }
  const sample = (x: number): number => y[Math.round((x - from) / dx)]!;
  const x = at + l / 2;
  return sample(x) - sample(0) - ((sample(l) - sample(0)) * x) / l;
};

import { describe, expect, it } from 'vitest';
import { metalById, metalOfStrength, scaleCurve } from '../metal/index.js';
import {
  type AirBend, airBend, airBendAtDepth, type AirBendSetup, bendRange, crowningOf, deductionFor, deductionFromStrip, deductionsFromCsv,
  deductionsToCsv, explainV, fittedByTools, fittedK, hemCloseForce, type MeasuredBend, type MeasuredDeduction, metalFromBends, minimumFlange,
  plateBeam, pressingForce, stepLimits, testStripFor, textbookForce,
} from './index.js';

const dc01 = metalById('dc01')!;
const setup: AirBendSetup = { metal: dc01, thickness: 2, v: 16, vConvention: 'sharp', dieAngle: 80, shoulderRadius: 2, tipRadius: 1 };
const value = (s: AirBendSetup, bendAngle = 90): AirBend => {
  const result = airBend({ ...s, bendAngle });
  if (!result.ok) throw new Error(result.reason.sentence);
  return result.value;
};
const bend = value(setup);

describe('stock at the ends of its range', () => {
  const scatter = { thickness: { minus: -0.1, plus: 0.1 }, strength: { min: 0.9, max: 1.1 } };
  it('a thicker sheet comes out more bent where the ram position is held than where the depth from touch is (CHECKS 9)', () => {
    const spread = (held: 'ram position' | 'depth from touch'): number => {
      const r = bendRange({ ...setup, bendAngle: 90 }, { ...scatter, held });
      if (!r.ok) throw new Error(r.reason.sentence);
      expect(r.value.bendAngleReleased.min).toBeLessThan(90);
      expect(r.value.bendAngleReleased.max).toBeGreaterThan(90);
      return r.value.bendAngleReleased.max - r.value.bendAngleReleased.min;
    };
    // +0.10 mm: 0.7 degrees from touch, 2.4 degrees at a fixed tip (radius held, V 16 tangent): the second is much the wider
    expect(spread('ram position')).toBeGreaterThan(2 * spread('depth from touch'));
  });
  it('+0.10 mm of sheet at a fixed tip over-bends by about 2.4 degrees (CHECKS 9, DERIVED with the radius held)', () => {
    const tangent = { ...setup, vConvention: 'tangent', dieAngle: 60, tipRadius: 2 } as const;
    const nominal = value(tangent);
    const thick = airBendAtDepth({ ...tangent, thickness: 2.1, depth: nominal.depth + 0.1 });
    if (!thick.ok) throw new Error(thick.reason.sentence);
    // the strip's own radius grows with the sheet, which takes back a part
    expect(thick.value.bendAngleReleased - 90).toBeGreaterThan(1.4);
    expect(thick.value.bendAngleReleased - 90).toBeLessThan(2.8);
  });
  it('force follows strength and the square of thickness', () => {
    const r = bendRange({ ...setup, bendAngle: 90 }, { ...scatter, held: 'depth from touch' });
    if (!r.ok) throw new Error(r.reason.sentence);
    const { min, max } = r.value.peakForcePerLength;
    expect(max / bend.peakForcePerLength).toBeCloseTo(1.1 * 1.05 ** 2, 1);
    expect(min / bend.peakForcePerLength).toBeCloseTo(0.9 * 0.95 ** 2, 1);
  });
  it('a sheet that comes onto the walls counts with its force there, and the depth is told to bottom it', () => {
    const strong = metalById('s355jr')!;
    const stroke = { ...setup, metal: strong, thickness: 3, v: 24, dieAngle: 85, bendAngle: 90 };
    const r = bendRange(stroke, { thickness: { minus: -0.22, plus: 0.22 }, held: 'ram position' });
    if (!r.ok) throw new Error(r.reason.sentence);
    // the strongest metal at its nominal thickness, short of the walls: a thicker sheet of it asks more on its way there
    const nominal = value({ ...stroke, metal: metalOfStrength(strong, 680 / 540) }, 80).peakForcePerLength;
    expect(r.value.peakForcePerLength.max).toBeGreaterThan(1.05 * nominal);
    expect(r.value.bottoms).toMatch(/^the depth set for the typical sheet bottoms the thickest and strongest .*: 3\.22 mm of sheet at 126 % of typical strength lies on the walls of the die of 85 degrees included 0\.\d\d mm before the stroke ends, at \d+ N\/mm/);
    expect(r.value.words).toContain(r.value.bottoms!);
  });
  it('no scatter, no range', () => {
    const r = bendRange({ ...setup, bendAngle: 90 }, { thickness: { minus: 0, plus: 0 }, strength: { min: 1, max: 1 }, held: 'ram position' });
    if (!r.ok) throw new Error(r.reason.sentence);
    expect(r.value.bendAngleReleased.max - r.value.bendAngleReleased.min).toBeLessThan(1e-5);
    expect(r.value.flangeChange.max).toBeCloseTo(0, 6);
  });
});

const row: MeasuredDeduction = {
  metal: 'dc01', thickness: 2, v: 16, vConvention: 'sharp', tipRadius: 1, bendAngle: 90, deduction: 3.55, pieces: 3, spread: 0.04,
  note: 'batch 7, "blue" oil; checked',
};

describe("the shop's measured deductions", () => {
  it('override the strip where they fit, lend their K to other angles, and leave other tools to the strip', () => {
    const query = { metal: 'dc01', thickness: 2, v: 16, vConvention: 'sharp', tipRadius: 1, bendAngle: 90 } as const;
    const exact = deductionFor([row, { ...row, deduction: 3.65, pieces: 1, spread: 0 }], query, bend);
    expect(exact.source).toBe('measured');
    expect(exact.deduction).toBeCloseTo((3 * 3.55 + 3.65) / 4, 12);
    expect(exact.spread).toBeCloseTo(3.65 - 3.575, 12);
    const other = deductionFor([row], { ...query, bendAngle: 60 }, value(setup, 60));
    expect(other.source).toBe('fitted K');
    expect(deductionFor([row], { ...query, v: 12 }, bend).source).toBe('strip');
    expect(deductionFor([row], { ...query, v: 12 }, bend).deduction).toBe(bend.deduction);
  });
  it('one piece has no spread; what is too far from the calculated is told to beware of, with both figures', () => {
    const query = { metal: 'dc01', thickness: 2, v: 16, vConvention: 'sharp', tipRadius: 1, bendAngle: 90 } as const;
    const one = { ...row, pieces: 1, spread: 0 };
    expect(deductionFor([one], query, bend)).toMatchObject({ spread: null, words: 'measured on 1 piece, spread not known' });
    expect(deductionFor([one], { ...query, bendAngle: 60 }, value(setup, 60)).spread).toBeNull();
    expect(deductionsToCsv([one]).split('\n')[1]).toContain(',1,,');
    expect(deductionsFromCsv(deductionsToCsv([one]))).toEqual({ ok: true, rows: [one] });
    expect(deductionFor([row], query, bend).beware).toBeUndefined();
    const wild = { ...row, deduction: -3.45, pieces: 2, spread: 6.55 };
    const calculated = bend.deduction.toFixed(2);
    expect(deductionFor([wild], query, bend).beware).toBe(`The shop's measured deduction for 2.00 mm over V 16.0 at a bend angle of 90.0 degrees is -3.45 mm, the calculated one ${calculated} mm: measure a strip again before a blank is cut.`);
    expect(deductionFor([wild], { ...query, bendAngle: 60 }, value(setup, 60)).beware).toMatch(/bend angle of 60\.0 degrees/);
  });
  it('K by hand: deduction 3.55 with R 2.28, t 2 at 90 degrees', () => {
    // allowance = 2 (2.28 + 2) - 3.55 = 5.01; K = (5.01 / (pi/2) - 2.28) / 2 = 0.4547
    const k = fittedK([{ ...row, insideRadius: 2.28 }], () => 0)!;
    expect(k.k).toBeCloseTo(0.4547, 4);
    expect(k.rows).toBe(1);
    const spread = fittedK([{ ...row, insideRadius: 2.28 }, { ...row, insideRadius: 2.28, deduction: 3.65 }], () => 0)!;
    expect(spread.max - spread.min).toBeCloseTo(0.1 / (Math.PI / 2) / 2, 10);
  });
  it('by metal and tools: a K each, by hand as above; none where neither strip nor metal tells the radius', () => {
    const other = { ...row, metal: 'nowhere known' };
    const tools = fittedByTools([{ ...row, insideRadius: 2.28 }, other, { ...row, insideRadius: 2.28, deduction: 3.65 }], metalById);
    expect(tools.map(({ rows, k }) => [rows.length, k === null])).toEqual([[2, false], [1, true]]);
    expect([tools[0]!.k!.min, tools[0]!.k!.max].map((k) => Number(k.toFixed(4)))).toEqual([0.4229, 0.4547]);
  });
  it('go out as CSV and come back the same', () => {
    const rows = [row, { ...row, bendAngle: 60, deduction: 1.7, insideRadius: 3.1, note: '' }];
    const back = deductionsFromCsv(deductionsToCsv(rows));
    expect(back).toEqual({ ok: true, rows });
  });
  it('are read with semicolons and decimal commas too', () => {
    const text = 'metal;thickness_mm;v_mm;v_convention;tip_radius_mm;bend_angle_deg;deduction_mm\r\ndc01;1,5;12;tangent;1;90;2,71\r\n';
    expect(deductionsFromCsv(text)).toEqual({
      ok: true,
      rows: [{ metal: 'dc01', thickness: 1.5, v: 12, vConvention: 'tangent', tipRadius: 1, bendAngle: 90, deduction: 2.71, pieces: 1, spread: 0, note: '' }],
    });
  });
  it.each([
    ['metal,thickness_mm\n', 1], ['x\n', 1],
    [deductionsToCsv([{ ...row, thickness: 0 }]), 2], [deductionsToCsv([row, { ...row, bendAngle: 190 }]), 3],
    [deductionsToCsv([row]).replace('sharp', 'wide'), 2], [deductionsToCsv([row]).replace('3.55', ''), 2],
  ] as const)('names the line that is wrong: %#', (text, line) => {
    const result = deductionsFromCsv(text);
    expect(result.ok ? 0 : result.line).toBe(line);
  });
  it('a test strip gives its row: legs 51.8 and 51.7 on 100 mm cut', () => {
    const { deduction: _d, pieces: _p, spread: _s, note: _n, ...tools } = row;
    const strip = deductionFromStrip(tools, [{ legs: [51.8, 51.7], cut: 100 }, { legs: [51.85, 51.75], cut: 100 }])!;
    expect(strip.deduction).toBeCloseTo(3.55, 10);
    expect(strip.spread).toBeCloseTo(0.05, 10);
    expect(deductionFromStrip(tools, [])).toBeNull();
  });
});

describe('a metal from measured bends', () => {
  // the "shop's" sheet: 12 percent stronger than typical, and a depth scale whose zero is 0.03 mm off
  const truth = { ...dc01, curve: scaleCurve(dc01.curve, 1.12) };
  const measure = (bendAngle: number, more: boolean): MeasuredBend => {
    const real = value({ ...setup, metal: truth }, bendAngle);
    const { metal: _m, ...tools } = setup;
    return {
      setup: tools, depth: real.depth - 0.03, bendAngleReleased: bendAngle,
      ...(more ? { bendAngleUnderLoad: real.bendAngleUnderLoad, peakForcePerLength: real.peakForcePerLength } : {}),
    };
  };
  it('finds strength and depth zero within the errors it states, from two bends with angle under load and force', () => {
    const fitted = metalFromBends([measure(90, true), measure(60, true)], dc01, 'batch', 'batch');
    if (!fitted.ok) throw new Error(fitted.sentence);
    const { strength, strengthError, depthOffset, depthOffsetError, worstMisfit, metal } = fitted.value;
    expect(Math.abs(strength - 1.12)).toBeLessThan(strengthError);
    expect(strengthError).toBeLessThan(0.04);
    expect(Math.abs(depthOffset - 0.03)).toBeLessThan(depthOffsetError);
    expect(worstMisfit).toBeLessThan(1);
    expect(metal.curveSource.mark).toBe('measured');
    // and it bends like the sheet: the third bend, not measured
    const [a, b] = [value({ ...setup, metal }, 75), value({ ...setup, metal: truth }, 75)];
    expect(Math.abs(a.springback - b.springback)).toBeLessThan(0.15);
  });
  it('says how little two angles alone tell', () => {
    const poor = metalFromBends([measure(90, false), measure(60, false)], dc01, 'batch', 'batch');
    if (!poor.ok) throw new Error(poor.sentence);
    expect(poor.value.strengthError).toBeGreaterThan(0.08);
  });
  it('notices a reading that does not fit, and a single bend', () => {
    const wrong = metalFromBends([{ ...measure(90, true), bendAngleUnderLoad: 97 }, measure(60, true)], dc01, 'batch', 'batch');
    if (!wrong.ok) throw new Error(wrong.sentence);
    expect(wrong.value.worstMisfit).toBeGreaterThan(2);
    expect(wrong.value.words).toContain('measure again');
    expect(metalFromBends([measure(90, true)], dc01, 'batch', 'batch').ok).toBe(false);
  });
  it('plans the strip: size, two depths, what to read', () => {
    const plan = testStripFor({ ...setup, bendAngle: 90 });
    if (!plan.ok) throw new Error(plan.reason.sentence);
    expect(plan.value.along).toBe(100);
    expect(plan.value.across).toBe(100);
    expect(plan.value.bends.map((b) => b.bendAngle)).toEqual([90, 60]);
    expect(plan.value.measure.join(' ')).toContain(`${bend.depth.toFixed(2)} mm`);
  });
});

describe('limits of a step', () => {
  const machine = { rating: 600e3, ratingPerLength: 500, cylinderSpacing: 2550, ram: plateBeam(60, 800, 2550), bed: plateBeam(60, 800, 2550) };
  const step = { setup, bend, pieces: [{ from: -500, to: 500 }], machine, punchRating: 1000, dieRating: 1000, flange: 20, grain: 'across', holeDistance: 8, angleTolerance: 0.5 } as const;
  const of = (limits: ReturnType<typeof stepLimits>, name: string) => limits.find((l) => l.name === name)!;
  it('each has its margin and source', () => {
    const limits = stepLimits(step);
    // four of force, two of cylinders, the die's angle, two of the flange, radius, hole, angle spread
    expect(limits).toHaveLength(12);
    for (const l of limits) {
      expect(l.source).not.toBe('');
      expect(l.holds).toBe(l.margin >= 0);
    }
    expect(of(limits, 'force against the machine').value).toBeCloseTo(1000 * bend.peakForcePerLength, 6);
    // 2.5 t + R
    expect(of(limits, 'hole or cut-out to the bend line').limit).toBeCloseTo(5 + bend.insideRadius, 10);
  });
  it('a stroke outside the cylinders levers the ram up and is refused', () => {
    const limits = stepLimits({ ...step, pieces: [{ from: 1000, to: 1600 }] });
    const emptier = of(limits, 'force on the emptier cylinder');
    expect(emptier.holds).toBe(false);
    // statics by hand: F (1/2 - 1300/2550)
    expect(emptier.value).toBeCloseTo(600 * bend.peakForcePerLength * (0.5 - 1300 / 2550), 6);
  });
  it('two pieces bent at once load the cylinders by their resultant', () => {
    const limits = stepLimits({ ...step, pieces: [{ from: -1000, to: -800 }, { from: 0, to: 600 }] });
    const at = (-900 * 200 + 300 * 600) / 800;
    expect(of(limits, 'force on the fuller cylinder').value).toBeCloseTo(800 * bend.peakForcePerLength * (0.5 + Math.abs(at) / 2550), 6);
  });
  it('uncrowned deflection becomes an angle spread; a device takes most of it', () => {
    const bare = crowningOf(step)!;
    const set = crowningOf({ ...step, machine: { ...machine, crowning: { shape: 'parabola', length: 2550 } } })!;
    expect(bare.uncrowned).toBeGreaterThan(0);
    expect(set.residual).toBeLessThan(0.1 * bare.residual);
    expect(of(stepLimits(step), 'angle spread along the bend by deflection').value).toBeGreaterThan(0);
  });
  it('flange: start and end by hand (CHECKS 4: 0.62 to 0.63 V and 0.58 to 0.61 V at V/t 8, Ri 0.16 V)', () => {
    for (const [v, t, rd] of [[8, 1, 1], [16, 2, 2], [40, 5, 4]] as const) {
      const ri = 0.16 * v;
      // deduction of a K of 0.44 at 90 degrees
      const deduction = 2 * (ri + t) - (Math.PI / 2) * (ri + 0.44 * t);
      const f = minimumFlange({ v, vConvention: 'tangent', dieAngle: 80, shoulderRadius: rd }, { bendAngleUnderLoad: 90, deduction, overTangent: 0 });
      expect(f.atStart / v).toBeGreaterThan(0.61);
      expect(f.atStart / v).toBeLessThan(0.64);
      expect(f.atEnd / v).toBeGreaterThan(0.57);
      expect(f.atEnd / v).toBeLessThan(0.62);
      // the trade's 0.7 V, PRACTICE: warns only
      if (Math.abs(f.flange / v - 0.7) > 0.02) console.warn(`PRACTICE: smallest flange ${(f.flange / v).toFixed(3)} V against 0.7 V`);
    }
  });
  it('hems and other strokes by factors that say they have no source', () => {
    // PRACTICE, MEMORY-low: 3 to 4 times the air bend of the same sheet; warns only
    const ratio = hemCloseForce(335, 2, 'closed') / textbookForce(335, 2, 16);
    if (!(ratio >= 3 && ratio <= 4)) console.warn(`PRACTICE: closed hem ${ratio} times the air bend`);
    expect(pressingForce('coining', 100).most).toBeGreaterThan(pressingForce('bottoming', 100).most);
  });
});

describe('V and punch explained', () => {
  const dies = [8, 10, 12, 16, 20, 24].map((v) => ({ id: `V${v}`, v, vConvention: 'sharp', includedAngle: 80, shoulderRadius: v / 8, rating: 800 }) as const);
  const punches = [{ id: 'P1', tipRadius: 1, includedAngle: 78, rating: 800 }, { id: 'P3', tipRadius: 3, includedAngle: 78, rating: 800 }];
  it('takes 8 t for 2 mm and says what the neighbours would do', () => {
    const { ranked, words } = explainV({ metal: dc01, thickness: 2, bendAngle: 90 }, dies, punches);
    expect(ranked[0]!.v).toBe(16);
    expect(ranked).toHaveLength(12);
    expect(words).toHaveLength(3);
    expect(words[0]).toContain('8.0 times the thickness');
    expect(words[1]).toContain('V 12');
    expect(words[2]).toContain('V 20');
    const by = (v: number) => ranked.find((c) => c.v === v && c.punch === 'P1')!;
    expect(by(12).shoulderPressure!).toBeGreaterThan(by(16).shoulderPressure!);
  });
  it('takes a narrower V for a short flange and a rounder tip for a drawn radius', () => {
    expect(explainV({ metal: dc01, thickness: 2, bendAngle: 90, flange: 10 }, dies, punches).ranked[0]!.v).toBe(12);
    expect(explainV({ metal: dc01, thickness: 2, bendAngle: 90, insideRadius: 3.3 }, dies, punches).ranked[0]!.punch).toBe('P3');
  });
  it('reaches for a fragile nose only where the drawn radius asks for it (common practice, no source)', () => {
    const acute = { id: 'A', tipRadius: 0.5, includedAngle: 30, rating: 300 };
    expect(explainV({ metal: dc01, thickness: 2, bendAngle: 90 }, dies, [acute, ...punches]).ranked[0]!.punch).toBe('P1');
    // sharper than the 78 degrees of the others go: only the acute one is left
    expect(explainV({ metal: dc01, thickness: 2, bendAngle: 120 }, dies.map((d) => ({ ...d, includedAngle: 28 })), [...punches, acute]).ranked[0]!.punch).toBe('A');
  });
  it('says why nothing suits', () => {
    const { words } = explainV({ metal: dc01, thickness: 2, bendAngle: 90, flange: 4 }, dies, punches);
    expect(words[0]).toContain('No pair suits');
    expect(explainV({ metal: dc01, thickness: 2, bendAngle: 90 }, [], []).words[0]).toContain('no tools');
  });
});

it('a batch at its strongest asks more and springs back more', () => {
  const strong = value({ ...setup, metal: metalOfStrength(dc01, 1.2) });
  expect(strong.peakForcePerLength / bend.peakForcePerLength).toBeCloseTo(1.2, 1);
  expect(strong.springback).toBeGreaterThan(bend.springback);
});

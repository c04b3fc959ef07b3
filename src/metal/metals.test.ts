import { describe, expect, it } from 'vitest';
import {
  flowStress, metalById, metalFromTensileTest, metalOfStrength, metals, proofStress, swiftFromTensile, tensileOf,
} from './index.js';

describe("Considere's identity Rm = K n^n e^-n (CHECKS 7, DERIVED from the K and n of the books)", () => {
  it.each([
    ['low-carbon, Kalpakjian table 2.3', 530, 0.26, 287.9],
    ['low-carbon, Callister', 600, 0.21, 350.4],
    ['304, Kalpakjian', 1275, 0.45, 567.6],
    ['304, Callister', 1400, 0.44, 628.3],
    ['6061-T6, Kalpakjian', 410, 0.05, 335.8],
    ['1100-O, Kalpakjian', 180, 0.2, 106.8],
    ['copper annealed, Kalpakjian', 315, 0.54, 131.6],
    ['70-30 brass, Kalpakjian', 900, 0.49, 388.7],
  ] as const)('%s', (_name, k, n, strength) => {
    expect(Math.abs(tensileOf({ kind: 'hollomon', k, n }).strength - strength)).toBeLessThanOrEqual(0.051);
  });
  it('Swift of CHECKS 12: Re 274.4, Rm 384.47', () => {
    const curve = { kind: 'swift', k: 620, n: 0.18, e0: 0.0108 } as const;
    expect(tensileOf(curve).strength).toBeCloseTo(384.47, 2);
    expect(flowStress(curve, 0)).toBeCloseTo(274.4, 1);
  });
  it('points: greatest engineering stress found within a segment, by hand', () => {
    // s = 100 + 400 e; s e^-e is greatest where 400 = 100 + 400 e: e = 0.75, 400 e^-0.75
    const { strength, uniformStrain } = tensileOf({ kind: 'points', points: [[0, 100], [1, 500]] });
    expect(uniformStrain).toBeCloseTo(0.75, 12);
    expect(strength).toBeCloseTo(400 * Math.exp(-0.75), 12);
  });
});

describe('bands seen in standards (CHECKS 7)', () => {
  // EN 10025-2 table 7 SEEN readle.co.uk; EN 10130:1999 SEEN ro.scribd.com/document/93314079; A36 SEEN benjaminsteel.com
  it.each([
    ['s235jr', 'yield', 235, null], ['s235jr', 'tensile', 360, 510], ['s355jr', 'yield', 355, null],
    ['s355jr', 'tensile', 470, 680], ['dc01', 'yield', null, 280], ['dc01', 'tensile', 270, 410],
    ['dc03', 'yield', null, 240], ['dc03', 'tensile', 270, 370], ['dc04', 'yield', null, 210],
    ['dc04', 'tensile', 270, 350], ['a36', 'yield', 250, null], ['a36', 'tensile', 400, 550],
  ] as const)('%s %s', (id, what, min, max) => {
    const band = metalById(id)![what];
    expect(band.mark).toBe('standard');
    if (min !== null) expect(band.min).toBe(min);
    if (max !== null) expect(band.max).toBe(max);
  });
  it('figures from memory warn and never fail', () => {
    const recalled: readonly (readonly [string, number, number])[] = [
      ['1.4301', 230, 540], ['aw-5754-o', 80, 190], ['aw-5754-h22', 130, 220], ['6061-t6', 240, 290], ['5052-h32', 160, 215],
      ['aw-1050a-h14', 85, 105], ['aw-1050a-o', 20, 65], ['s700mc', 700, 750],
    ];
    for (const [id, least, strength] of recalled) {
      const metal = metalById(id)!;
      expect(metal.tensile.mark).toBe('memory');
      if (metal.yield.min !== least || metal.tensile.min !== strength) console.warn(`MEMORY: ${id} differs from ${least} and ${strength} MPa`);
    }
  });
});

describe('metals as data', () => {
  it('cover the families asked for, each figure with mark and source', () => {
    expect(new Set(metals.map((m) => m.family)).size).toBe(8);
    expect(new Set(metals.map((m) => m.id)).size).toBe(metals.length);
    for (const m of metals) {
      for (const source of [m.elasticSource, m.curveSource, m.tensile, m.yield, m.minRadius]) expect(source.source).not.toBe('');
      for (const band of [m.tensile, m.yield]) {
        expect(band.min).toBeLessThanOrEqual(band.typical);
        expect(band.typical).toBeLessThanOrEqual(band.max);
      }
    }
  });
  it('the curve of each passes through its typical strength and proof stress', () => {
    for (const m of metals) {
      expect(tensileOf(m.curve).strength).toBeCloseTo(m.tensile.typical, 6);
      expect(proofStress(m.curve)).toBeCloseTo(m.yield.typical, 6);
    }
  });
  it('a Swift law comes back from its own tensile figures', () => {
    const law = { kind: 'swift', k: 620, n: 0.18, e0: 0.0108 } as const;
    const back = swiftFromTensile(proofStress(law), tensileOf(law).strength, 0.18 - 0.0108)!;
    expect(back.k).toBeCloseTo(620, 6);
    expect(back.n).toBeCloseTo(0.18, 8);
    expect(back.e0).toBeCloseTo(0.0108, 8);
  });
  it("a shop's own metal from a tensile test, or the reason why not", () => {
    const own = metalFromTensileTest('own', 'our sheet', { yield: 245, tensile: 340, uniformElongation: 21 }, metalById('dc01')!);
    if (!own.ok) throw new Error(own.sentence);
    expect(proofStress(own.metal.curve)).toBeCloseTo(245, 6);
    expect(tensileOf(own.metal.curve).strength).toBeCloseTo(340, 6);
    expect(own.metal.curveSource.mark).toBe('measured');
    const none = metalFromTensileTest('own', 'our sheet', { yield: 345, tensile: 340, uniformElongation: 21 }, metalById('dc01')!);
    expect(none.ok).toBe(false);
  });
  it('a stronger batch has every stress times the factor', () => {
    const strong = metalOfStrength(metalById('dc01')!, 1.1);
    expect(flowStress(strong.curve, 0.1) / flowStress(metalById('dc01')!.curve, 0.1)).toBeCloseTo(1.1, 12);
    expect(strong.tensile.typical).toBeCloseTo(1.1 * 335, 10);
  });
});

import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { type Dimension, partFromLine } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { planTrial } from './planTrial.js';

const all = demoRack();
const oneV = { ...all, dies: all.dies.filter(({ id }) => id === 'die-v12-30') };

const tried = (line: string, dimensions?: readonly Dimension[], rack = all, toleranceClass?: 'c'): ReturnType<typeof planTrial> => {
  const part = partFromLine(line, 'p');
  if (!part.ok) throw new Error(part.fault.sentence);
  const machine = demoFloor().find(({ id }) => id === 'general')!;
  return planTrial({ part: { ...part.value, ...(dimensions ? { dimensions } : {}) }, machine, rack, metal: metalById('dc01')!, quantity: 1, ...(toleranceClass ? { toleranceClass } : {}) });
};
/** Over both flanges of a Z whose middle plate leans by 120 degrees. */
const overall = (tolerance: number): readonly Dimension[] => [{ id: 'd1', tolerance, between: [{ kind: 'face', plate: 0, side: 'B' }, { kind: 'face', plate: 2, side: 'A' }] }];
const Z = '40 ^120 60 v120 40 t2 w200 r1';

describe('a length that the tools form otherwise than drawn', () => {
  it('past 90 degrees flanges come out at the length typed, whatever radius forms', () => {
    const { dimensions, steps } = tried('40 ^135 60 t2 w200 r1');
    expect(steps[0]!.insideRadius).toBeGreaterThan(1.1);
    expect(dimensions!.map(({ value }) => value)).toEqual([expect.closeTo(40, 6), expect.closeTo(60, 6)]);
    expect(dimensions!.every(({ drawn }) => drawn === undefined)).toBe(true);
  });

  // drawn by hand: (60 - 2 x 3) sin 120 + 2 x 2 (1 - cos 120) between the middle planes, and the thickness
  const drawn = 54 * Math.sin((2 * Math.PI) / 3) + 6 + 2;

  it('is told beside the drawn one, and the tolerance is about the drawn one', () => {
    const [d] = tried(Z, overall(2)).dimensions!;
    expect(d!.drawn).toBeCloseTo(drawn, 6);
    expect(d!.value - drawn).toBeGreaterThan(0.3);
    expect(d).toMatchObject({ verdict: 'holds' });
  });

  it('where nobody named it, follows from the flanges, which are as drawn: a class is held about that', () => {
    const { verdict, dimensions } = tried(Z, undefined, oneV, 'c');
    expect(verdict).toBe('makes');
    const last = dimensions!.at(-1)!;
    expect(last).toMatchObject({ verdict: 'holds', askedBy: expect.stringMatching(/, about what follows from the flanges as formed$/) });
    expect(last.value - drawn).toBeGreaterThan(0.3);
    expect(dimensions!.every((d) => d.drawn === undefined)).toBe(true);
  });

  it('does not hold a tolerance that its scatter alone would keep', () => {
    const [free] = tried(Z, overall(2), oneV).dimensions!;
    const tolerance = free!.batch.rootSumSquare + (free!.value - drawn) / 2;
    const { verdict, reasons } = tried(Z, overall(tolerance), oneV);
    expect(verdict).toBe('does not make');
    expect(reasons[0]).toMatchObject({ code: 'tolerance' });
    // 54.77 mm by hand, as above
    expect(reasons[0]!.sentence).toMatch(/54\.77 mm ± [\d.]+\) comes out at 5\d\.\d\d mm as these tools form it, [\d.]+ mm over the drawing, and scatters by/);
  });
});

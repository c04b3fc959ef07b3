import { describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { partFromLine } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { planTrial } from './planTrial.js';
import type { Trial } from './trial.js';

const tried = (line: string): Trial => {
  const part = partFromLine(line, 'p');
  if (!part.ok) throw new Error(part.fault.sentence);
  return planTrial({ part: part.value, machine: demoFloor().find(({ id }) => id === 'general')!, rack: demoRack(), metal: metalById('dc01')!, quantity: 1 });
};
const held = ({ warnings }: Trial): readonly string[] => warnings.filter((words) => /weight behind the die|to hold, under/.test(words));

describe('a sheet that hangs behind the die or is small in front of it', () => {
  it('says what it weighs, where its centre lies and what holds it down, with the figures', () => {
    const trial = tried('25 ^90 600 t3 w800');
    const [step] = trial.steps;
    // the long flange goes to the gauge: the blank's middle, counted from the bend line, which lies half the deduction short of the flange's 25 mm
    expect(step!.stop.axisX).toBeGreaterThan(500);
    const [length, front] = [625 - step!.deduction, 25 - step!.deduction / 2];
    const kilograms = length * 800 * 3 * 7.85e-6;
    const centre = length / 2 - front;
    const [, kg, mm, shoulder, before, down] = /: ([\d.]+) kg with its centre (\d+) mm .* lies at (\d+) mm, and (\d+) mm of sheet in front, .* about (\d+) kg/.exec(held(trial)[0]!)!.map(Number);
    expect([kg, mm, before]).toEqual([Number(kilograms.toFixed(1)), Math.round(centre), Math.round(front)]);
    // V 24: shoulders half of it, and what their rounding adds
    expect(shoulder).toBeGreaterThanOrEqual(12);
    expect(shoulder).toBeLessThan(15);
    expect(Math.abs(down! - (kilograms * (centre - shoulder!)) / (front + shoulder!))).toBeLessThan(3);
    expect(held(trial)[1]).toMatch(/^Step 1 leaves \d mm by 800 mm of sheet in front of the die to hold, under 25 mm by 25 mm \(common practice, no source\): hold it with pliers or a magnetic holder, never with fingers near the tools/);
  });

  it('a piece of a finger\'s width is for pliers; one that lies by itself and fills the hand is not spoken of', () => {
    expect(held(tried('6 ^90 6 t1 w10'))).toEqual([expect.stringMatching(/^Step 1 leaves \d mm by 10 mm of sheet .* pliers or a magnetic holder/)]);
    expect(held(tried('80 ^90 60 t1 w100'))).toEqual([]);
  });
});

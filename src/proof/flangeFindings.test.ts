import { describe, expect, it } from 'vitest';
import { HALF_OPENING, SHOULDER, THICKNESS, allowance, angleTrial, loadOf, rectangle, stepOf, stripPart, trialOf } from '../../test/proof/handTrial.js';
import { type Contour, vertex } from '../geometry/index.js';
import type { Part } from '../sheet/index.js';
import type { Trial } from '../trial/index.js';
import { proveTrial } from './index.js';

// A V of 16, half opening c. From the tangent line: flat, past the arc of the shoulder, c - a/2 = 6.24; under load the wing at b = 45.5
// degrees bears where the shoulder's centre stands across from it: c / cos b - (Ri + t + rd) tan b - what the arc's depth leaves. 0.07 of 2 c beyond it.
const b = (45.5 * Math.PI) / 180;
const inside = allowance(90) / (2 * b) - 0.8;
const BEARS = HALF_OPENING / Math.cos(b) - (inside + THICKNESS + SHOULDER) * Math.tan(b);
const LEAST = Math.max(BEARS, HALF_OPENING - allowance(90) / 2) + 0.14 * HALF_OPENING;

const shape = (...points: readonly (readonly [number, number])[]): Contour => points.map(([x, y]) => vertex(x, y));

/** The leg of 40 and 60 mm, the shorter one in front in another shape. */
const withFront = (outline: Contour): Trial => {
  const sheet = stripPart(100, [40, 60], [{ degrees: 90, direction: 'A' }]);
  const part: Part = { ...sheet.part, plates: [{ outline, holes: [] }, sheet.part.plates[1]!] };
  return trialOf({ ...sheet, part }, angleTrial().steps);
};
const findings = async (trial: Trial): Promise<string> => (await proveTrial(trial)).findings.join('\n');

describe('metal beside the bend reaches as far as the V asks', () => {
  it('a flange a little longer than that, and one a little shorter', async () => {
    expect(await findings(withFront(rectangle(0, 100, 40 - LEAST - 0.05, 40)))).toBe('');
    expect(await findings(withFront(rectangle(0, 100, 40 - LEAST + 0.3, 40)))).toContain(`reaches less than ${LEAST.toFixed(2)} mm from the tangent line of b1 over 100.0 mm of it; V 16 die asks ${LEAST.toFixed(2)} mm`);
  });

  it('half of it long and half of it short', async () => {
    expect(await findings(withFront(shape([0, 0], [50, 0], [50, 35], [100, 35], [100, 40], [0, 40])))).toMatch(/Step 1: .* of b1 over 50\.0 mm of it; V 16 die/);
  });

  it('mitred ends and a notch of one opening leave it as it is', async () => {
    expect(await findings(withFront(shape([30, 10], [40, 10], [40, 38], [56, 38], [56, 10], [70, 10], [100, 40], [0, 40])))).toBe('');
    expect(await findings(withFront(shape([30, 10], [40, 10], [40, 38], [57, 38], [57, 10], [70, 10], [100, 40], [0, 40])))).toContain('over ');
  });

  it('the shorter of two tabs of one stroke', async () => {
    const one = stripPart(40, [50, 30], [{ degrees: 90, direction: 'A' }]);
    const [bend] = one.part.bends;
    const line = (from: number, y: number) => ({ from: [from, y] as const, to: [from + 40, y] as const });
    const tabs = (second: number): Trial => trialOf({
      part: {
        ...one.part,
        plates: [{ outline: rectangle(0, 100, 0, 50), holes: [] }, one.part.plates[1]!, { outline: rectangle(0, 40, 0, second), holes: [] }],
        bends: [
          { ...bend!, sides: [{ plate: 0, line: line(0, 50) }, { plate: 1, line: line(0, 0) }] },
          { ...bend!, id: 'b2', sides: [{ plate: 0, line: line(60, 50) }, { plate: 2, line: line(0, 0) }] },
        ],
      },
      allowances: [allowance(90), allowance(90)],
    }, [stepOf(1, 'b1', 'A', 0, { plate: 0, x: allowance(90) / 2 + 50, r: 60, retract: 0 }, { bends: ['b1', 'b2'], ...loadOf(80) })]);
    expect(await findings(tabs(30))).toBe('');
    expect(await findings(tabs(6))).toMatch(/^Step 1: the flange beyond b2 reaches less than .* of b2 over 40\.0 mm of it/);
  });
});

describe('the force that a step writes down', () => {
  const spoilt = (change: Parameters<typeof angleTrial>[1]): Promise<string> => findings(angleTrial({}, change));

  it('is what a mm asks times the metal bent', async () => {
    expect(await spoilt({})).toBe('');
    expect(await spoilt({ force: 90 })).toBe('Step 1: its force is written as 90 N; 1 N/mm over the metal where it lies make 100 N.');
  });

  it('goes to each cylinder by the moments of its pieces', async () => {
    expect(await spoilt({ cylinderForces: [55, 45] })).toBe([
      'Step 1: the force on the left cylinder is written as 55 N; 1 N/mm over the metal where it lies make 50 N.',
      'Step 1: the force on the right cylinder is written as 45 N; 1 N/mm over the metal where it lies make 50 N.',
    ].join('\n'));
  });
});

import { describe, expect, it } from 'vitest';
import { demoRack } from './demo.js';
import { punchPenetration } from './punchPenetration.js';

const { punches, dies } = demoRack();
const punch = (id: string) => punches.find((p) => p.id === id)!;
const die = (id: string) => dies.find((d) => d.id === id)!;

/**
 * mm of the tip below the die top with t thick sheet at the bend angle under load (docs/kinematics.md, worked out here
 * anew): c = V/2 + rd tan(45 - die/4); c tan b - (Ri + t + rd)(1/cos b - 1) - t.
 */
const tipDepth = (v: number, dieAngle: number, rd: number, t: number, ri: number, bendAngle: number): number => {
  const rad = Math.PI / 180;
  const b = (bendAngle / 2) * rad;
  const c = v / 2 + rd * Math.tan((45 - dieAngle / 4) * rad);
  return c * Math.tan(b) - (ri + t + rd) * (1 / Math.cos(b) - 1) - t;
};

describe('the demo rack under one ram', () => {
  // pre-bend of a hem to 28 degrees included under load (30 less 2 of springback), flange to 88; inside radius of the
  // flange 0.156 V, of the pre-bend t (common practice, no source)
  it.each([
    [8, 1, 0.8, 0.8],
    [12, 1.5, 1, 1.2],
    [16, 2, 1.2, 1.6],
  ])('lets pre-bend, closing and a square flange stand side by side: V %d, sheet %d mm', (v, t, rdAcute, rdFlange) => {
    const [acute, square] = [die(`die-v${v}-30`), die(`die-v${v}-85`)];
    const allowance = 1;
    // up of the shoulder seat from the die seat when each tip touches its own bare die top
    const acuteStack = punch('acute-30').height + acute.height;
    const flangeStack = punch('straight-r1').height + square.height;
    const hemStack = punch('flattening').height + die('anvil').height;
    const lowest = {
      acute: acuteStack - tipDepth(v, 30, rdAcute, t, t, 152),
      flange: flangeStack - tipDepth(v, 85, rdFlange, t, 0.156 * v, 92),
      hem: hemStack + 2 * t,
    };
    // each station's punch may be lowered to here in its empty die
    const floor = {
      acute: acuteStack - punchPenetration(punch('acute-30'), acute, allowance),
      flange: flangeStack - punchPenetration(punch('straight-r1'), square, allowance),
      hem: hemStack - punchPenetration(punch('flattening'), die('anvil'), allowance),
    };
    for (const stroke of ['acute', 'flange', 'hem'] as const) {
      for (const other of ['acute', 'flange', 'hem'] as const) {
        if (stroke === other) continue;
        expect(lowest[stroke] - floor[other], `${stroke} stroke, ${other} station`).toBeGreaterThanOrEqual(0);
      }
    }
  });
});

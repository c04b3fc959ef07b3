import { beforeAll, describe, expect, it } from 'vitest';
import { apply, compose } from '../geometry/index.js';
import { metalById } from '../metal/index.js';
import { demoParts, fold, middleFrame } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { type Trial, planTrial } from '../trial/index.js';
import { filmOf } from './film.js';
import { bendIndex, stationOf } from './record.js';

/** mm: rounding of the poses. */
const NEAR = 1e-9;

describe('filmOf', () => {
  let trial: Trial;
  beforeAll(() => {
    const part = demoParts().find(({ name }) => name === 'Demo shelf bracket')!;
    const machine = demoFloor().find(({ id }) => id === 'general')!;
    trial = planTrial({ part, machine, rack: demoRack(), metal: metalById('dc01')!, quantity: 1 }, { now: () => 0 });
  });

  it('has the sheet flat on the die top when the punch closes', () => {
    const step = trial.steps[0]!;
    const { pose, angle } = filmOf(trial, step)(0.3);
    const middle = compose(pose, middleFrame(trial.sheet, bendIndex(trial, step.bends[0]!), 0, 0));
    expect(angle).toBe(0);
    // docs/kinematics.md: middle plane at dieTop + t/2, middle of the strip over back 0
    expect(middle.o[1]).toBeCloseTo(0, 9);
    expect(Math.abs(middle.o[2] - (stationOf(trial, step).dieTop + trial.sheet.part.thickness / 2))).toBeLessThan(NEAR);
  });

  it('has both wings at half the bend angle, the gauge side rising to the back', () => {
    const step = trial.steps[0]!;
    const { pose, angles, angle } = filmOf(trial, step)(0.77);
    expect(angle).toBe(step.bendAngle);
    const { sides } = trial.sheet.part.bends[bendIndex(trial, step.bends[0]!)]!;
    const poses = fold(trial.sheet, angles, sides[0].plate).poses.map((own) => compose(pose, own));
    const b = (step.bendAngle / 2) * (Math.PI / 180);
    for (const side of [0, 1] as const) {
      const { plate, line } = sides[side];
      const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]];
      const length = Math.hypot(dx, dy);
      // away from the bend in the plate: plate 1 lies to the left of its line, plate 0 to the right of its own
      const out = side === 1 ? 1 : -1;
      const from = apply(poses[plate]!, [line.from[0], line.from[1], 0]);
      const end = apply(poses[plate]!, [line.from[0] - (out * dy) / length, line.from[1] + (out * dx) / length, 0]);
      const back = side === step.gaugeSide ? 1 : -1;
      expect(end[1] - from[1]).toBeCloseTo(back * Math.cos(b), 9);
      expect(end[2] - from[2]).toBeCloseTo(Math.sin(b), 9);
    }
  });

  it('begins where the way in begins and ends where the way out ends', () => {
    const step = trial.steps[0]!;
    const back = (t: number): number => filmOf(trial, step)(t).pose.o[1];
    // this bracket comes in from the front and goes out to the front
    expect(back(0)).toBeLessThan(back(0.239) - 100);
    expect(back(1)).toBeLessThan(back(0.239) - 100);
  });
});

import { describe, expect, it } from 'vitest';
import { type Vec2, type Vec3, apply } from '../geometry/index.js';
import { fold } from '../sheet/index.js';
import { moveBody } from './body.js';
import { STOP_X, channelTrial } from './fixture.js';
import { fingerBodies, toolBodies } from './machineBodies.js';
import { anglesAfter, punchOf, seatPose, stationOf } from '../stroke/index.js';
import { sectionOf } from './sectionOf.js';
import { sheetBody } from './sheetBody.js';

const trial = channelTrial();
const [one, two] = [trial.steps[0]!, trial.steps[1]!];
const { dieTop } = stationOf(trial, one);

/** A point of a plate's middle plane in the machine. */
const inMachine = (step: typeof one, angles: readonly number[], running: number, plate: number, at: Vec2): Vec3 => {
  const root = trial.sheet.part.bends[running]!.sides[0].plate;
  const { poses } = fold(trial.sheet, angles, root);
  return apply(seatPose(trial, step, angles[running]!), apply(poses[plate]!, [at[0], at[1], 0]));
};

const close = (p: Vec3, q: Vec3): void => p.forEach((v, k) => expect(v).toBeCloseTo(q[k]!, 6));

describe('where the sheet lies at a step, by hand', () => {
  it('step 1: the blank flat on the die, flange 1 to the gauge, its edge at X', () => {
    // plate 0 runs y = 0 (edge) to 37 (tangent line), x from 0 to 200; x = 0 lies at place = +100
    close(inMachine(one, [0, 0], 0, 0, [0, 0]), [100, STOP_X, dieTop + 0.75]);
    close(inMachine(one, [0, 0], 0, 0, [200, 37]), [-100, STOP_X - 37, dieTop + 0.75]);
  });

  it('step 2: the web in front, flange 1 standing up there', () => {
    // web of 80 outside: flat 74; from the bend's middle a/2 + 74 to the far tangent line, then R + t/2 = 2.25 out and up
    const half = STOP_X - 37;
    close(inMachine(two, [90, 0], 1, 1, [0, 0]), [-100, -half - 74, dieTop + 0.75]);
    // the flange's free edge: 2.25 further out, and 37 above the arc's end
    close(inMachine(two, [90, 0], 1, 0, [0, 0]), [-100, -half - 74 - 2.25, dieTop + 0.75 + 2.25 + 37]);
  });

  it('step 2 made: both wings at 45 degrees, the inner apex at depth d(90)', () => {
    // die of V 12 between sharp corners, 85 degrees, shoulders of 1.2: half opening to the flat top
    const c = 6 + 1.2 * Math.tan(((45 - 85 / 4) * Math.PI) / 180);
    const d = c - (1.5 + 1.5 + 1.2) * (Math.SQRT2 - 1);
    const centre = dieTop + 1.5 - d + 1.5;
    // gauge wing: begins Rm/sqrt 2 behind and below the centre, then runs 37 at 45 degrees
    const [start, run] = [2.25 / Math.SQRT2, 37 / Math.SQRT2];
    close(inMachine(two, [90, 90], 1, 2, [0, 37]), [-100, start + run, centre - start + run]);
  });

  it('bends of earlier steps stay made, later ones flat', () => {
    expect([0, 1, 2].map((n) => anglesAfter(trial, n))).toEqual([[0, 0], [90, 0], [90, 90]]);
  });
});

describe('bodies of the machine', () => {
  it('fingers touch the edge that they stop, under its upper and over its lower face', () => {
    const [left] = fingerBodies(trial.machine, one, 0);
    const points = left!.faces.flatMap((face) => face.loops.flat());
    expect(Math.min(...points.map((p) => p[1]))).toBeCloseTo(STOP_X, 9);
    expect(Math.min(...points.map((p) => p[0]))).toBeCloseTo(-60 - trial.machine.gauge.finger.width / 2, 9);
    const nose = left!.marks.map((m) => m.from[2]);
    expect(Math.min(...nose)).toBeLessThan(dieTop + 1.5);
    expect(Math.max(...nose)).toBeGreaterThan(dieTop);
  });

  it('a punch segment stands where it is placed, its tip at the height asked', () => {
    const bodies = toolBodies(punchOf(trial, one.punch), 'as drawn', stationOf(trial, one).punchSegments, 150);
    const points = bodies.flatMap((body) => body.faces.flatMap((face) => face.loops.flat()));
    expect(Math.min(...points.map((p) => p[2]))).toBeCloseTo(150, 9);
    expect(Math.max(...points.map((p) => p[2]))).toBeCloseTo(150 + 125, 9);
    expect([Math.min(...points.map((p) => p[0])), Math.max(...points.map((p) => p[0]))]).toEqual([-100, 100]);
  });

  it('a reversed tool is its own mirror image, front for back', () => {
    const tool = { ...punchOf(trial, one.punch), profile: [[0, 0], [3, 5], [3, 50], [-1, 50]].map(([x, y]) => ({ x: x!, y: y!, bulge: 0 })) };
    const back = (facing: 'as drawn' | 'reversed'): readonly [number, number] => {
      const ys = toolBodies(tool, facing, [{ length: 100, from: 0 }], 0).flatMap((b) => b.faces.flatMap((f) => f.loops.flat())).map((p) => p[1]);
      return [Math.min(...ys), Math.max(...ys)];
    };
    expect(back('as drawn')).toEqual([-1, 3]);
    expect(back('reversed')).toEqual([-3, 1]);
  });
});

describe('the section of the sheet', () => {
  it('has the area of its strips: flats and arcs times the thickness', () => {
    const body = moveBody(seatPose(trial, two, 90), sheetBody(trial.sheet, [90, 90], 1));
    const rings = sectionOf(body, 0.1371);
    expect(rings.length).toBe(1);
    let twice = 0;
    rings[0]!.forEach((p, i) => {
      const q = rings[0]![(i + 1) % rings[0]!.length]!;
      twice += p[0] * q[1] - p[1] * q[0];
    });
    // 37 + 74 + 37 flat; two quarter rings of middle radius 2.25, whose chords of at most 14 degrees lose under 1 %
    const whole = 1.5 * (37 + 74 + 37 + 2 * (Math.PI / 2) * 2.25);
    expect(Math.abs(twice) / 2).toBeLessThan(whole);
    expect(Math.abs(twice) / 2).toBeGreaterThan(whole - 0.01 * 1.5 * Math.PI * 2.25);
  });
});

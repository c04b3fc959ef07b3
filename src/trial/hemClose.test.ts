import { describe, expect, it } from 'vitest';
import { type Developed, arcRuns, profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { pairOf } from './bodies.js';
import { foldOf, hemCloseOf, hemTipAt, hemWingsAt } from './hemClose.js';

const RADIANS = Math.PI / 180;

/**
 * 1 mm sheet. The pre-bend curves 3.0 mm to an inside radius of 0.8 at 150 degrees (152 under load); closed, 2.2 mm are curved to an
 * inside radius of 0.05: a middle of 2.2 between two ends of 0.4.
 */
const made = profilePart({ name: 'hem', thickness: 1, insideRadius: 1, width: 100, flanges: [60, 12], turns: [{ turn: 180, insideRadius: 0.05 }] });
if (!made.ok) throw new Error(made.failure.sentence);
const hem = { preBendAngle: 150, preBendAngleUnderLoad: 152, preInsideRadius: 0.8, preLength: 3, closedLength: 2.2 };
const sheet: Developed = { part: { ...made.value, bends: made.value.bends.map((b) => ({ ...b, kind: 'hem' as const, insideRadius: 0.05, hem })) }, allowances: [3] };

describe('the arc of a hem, by hand', () => {
  it('of one curvature up to the load of its pre-bend: 50 degrees a mm at 150', () => {
    const runs = arcRuns(sheet, 0, 150);
    expect(runs.map((r) => r.length)).toEqual([expect.closeTo(0.4, 12), 2.2, expect.closeTo(0.4, 12)]);
    expect(runs.map((r) => r.turned / RADIANS)).toEqual([expect.closeTo(20, 9), expect.closeTo(110, 9), expect.closeTo(20, 9)]);
    // the middle plane's radius everywhere: 0.8 + 0.5
    for (const { length, turned, shift } of runs) expect(length / turned + shift).toBeCloseTo(1.3, 12);
  });

  it('closed: its ends are flat again, the middle turns through 180 at a middle radius of 0.55', () => {
    const [first, middle, last] = arcRuns(sheet, 0, 180);
    expect([first!.turned, last!.turned]).toEqual([expect.closeTo(0, 12), expect.closeTo(0, 12)]);
    expect(middle!.turned).toBeCloseTo(Math.PI, 12);
    expect(middle!.length / middle!.turned + middle!.shift).toBeCloseTo(0.55, 12);
  });

  it('half way between load and closed: ends and middle half way too', () => {
    // 166 degrees; the ends had 152 x 0.4 / 3 = 20.27 each under load and have half of it
    const runs = arcRuns(sheet, 0, 166);
    expect(runs[0]!.turned / RADIANS).toBeCloseTo((152 * 0.4) / 3 / 2, 9);
    expect(runs.reduce((sum, r) => sum + r.turned, 0) / RADIANS).toBeCloseTo(166, 9);
  });

  it('of a bend that is no hem: one run, a / x + R + t/2 - a / final', () => {
    const plain = profilePart({ name: 'angle', thickness: 2, insideRadius: 3, width: 50, flanges: [40, 40], turns: [90] });
    if (!plain.ok) throw new Error(plain.failure.sentence);
    const [run, ...more] = arcRuns({ part: plain.value, allowances: [6] }, 0, 45);
    expect(more).toEqual([]);
    expect(run!.length / run!.turned + run!.shift).toBeCloseTo(6 / (Math.PI / 4) + 4 - 6 / (Math.PI / 2), 12);
  });
});

describe('the fold of a hem, by hand', () => {
  it('pre-bent: a circle of middle radius 1.3 stands 1.3 + 0.5 past the line, 1.3 up', () => {
    const { past, up } = foldOf(arcRuns(sheet, 0, 150), 1);
    expect(past).toBeCloseTo(1.8, 9);
    expect(up).toBeCloseTo(1.3, 9);
  });

  it('closed: 0.4 flat, then 0.55 + 0.5; as high as the middle radius', () => {
    const { past, up } = foldOf(arcRuns(sheet, 0, 180), 1);
    expect(past).toBeCloseTo(1.45, 9);
    expect(up).toBeCloseTo(0.55, 9);
  });

  it('turned through less than 90 it reaches as far as its end', () => {
    // 60 degrees on a length of 3: middle radius 3 / 1.0472 + 0.8 + 0.5 - 3 / 2.618
    const radius = 3 / (60 * RADIANS) + 1.3 - 3 / (150 * RADIANS);
    const { past, up } = foldOf(arcRuns(sheet, 0, 60), 1);
    expect(past).toBeCloseTo(radius * Math.sin(60 * RADIANS), 9);
    expect(up).toBeCloseTo(radius * (1 - Math.cos(60 * RADIANS)), 9);
  });
});

describe('closing it between flattening punch and anvil, by hand', () => {
  const rack = demoRack();
  const punch = rack.punches.find((p) => p.shape === 'flattening')!;
  const anvil = rack.dies.find((d) => d.shape === 'anvil')!;
  const close = hemCloseOf(sheet, 0, pairOf(demoFloor().find((m) => m.id === 'general')!, punch, anvil, 'as drawn'), 11);

  it('the fold stands 1.05 behind the punch, over its whole height', () => {
    const back = Math.max(...punch.profile.map((v) => v.x));
    expect(close.lineBack + 1.8).toBeCloseTo(back + 1.05, 9);
    expect([close.from, close.bendAngle, close.bendAngleUnderLoad]).toEqual([150, 180, 180]);
  });

  it('closed: two sheets and twice the radius high, the flange flat on the lying plate', () => {
    expect(hemTipAt(close, 180)).toBeCloseTo(2 * 1 + 2 * 0.05, 9);
    const { gauge, front } = hemWingsAt(close, 180);
    // both lines lie 0.4 in front of the arc, so over each other; middle planes 2 x 0.55 apart
    expect(gauge.x - front.x).toBeCloseTo(0, 9);
    expect(gauge.y - front.y).toBeCloseTo(1.1, 9);
    expect([gauge.c, gauge.s]).toEqual([expect.closeTo(-1, 9), expect.closeTo(0, 9)]);
  });

  it('pre-bent: the face meets the flange where it crosses the face\'s front edge, or its end', () => {
    // the arc ends at 150 degrees on the circle of 1.3: back 1.3 sin 150, up 1.3 (1 - cos 150); from there the flange rises forward at 30 degrees
    const end = { back: close.lineBack + 1.3 * Math.sin(150 * RADIANS), up: 0.5 + 1.3 * (1 - Math.cos(150 * RADIANS)) };
    const outer = { back: end.back + 0.5 * Math.sin(150 * RADIANS), up: end.up - 0.5 * Math.cos(150 * RADIANS) };
    const face = Math.max(...punch.profile.filter((v) => v.y < 0.01).map((v) => v.x));
    const reach = Math.min(11, (outer.back + face) / Math.cos(30 * RADIANS));
    expect(hemTipAt(close, 150)).toBeCloseTo(outer.up + reach * Math.sin(30 * RADIANS), 9);
  });
});

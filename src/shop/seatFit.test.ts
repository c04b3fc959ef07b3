import { describe, expect, it } from 'vitest';
import { demoFloor } from './demo.js';
import { halfRange, leastSlope, type LinePoint } from './leastHalfRange.js';
import type { Machine } from './machine.js';
import { seatFit } from './seatFit.js';
import { bestPlace, seatsLeft } from './seatPlace.js';

const FRAMES = { betweenFrames: 2000 };
const map = (...places: readonly (readonly [number, number])[]) => ({ source: 'measured', tilt: 'none', places: places.map(([along, gap]) => ({ along, gap })) }) as const;
const NOTHING = { tilt: false, crowning: false };
const TILT = { tilt: true, crowning: false };
const BOTH = { tilt: true, crowning: true };
const whole = [-1000, 1000] as const;

/** mulberry32 */
const random = (seed: number) => (): number => {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
};

describe('what tilt and crowning take off a wear map', () => {
  it('a level offset is nothing: the depth takes it up', () => {
    expect(seatFit(FRAMES, map([-1000, 0.3], [0, 0.3], [1000, 0.3]), whole, NOTHING)).toEqual({ asIs: 0, tilt: 0, crowning: 0, left: 0 });
  });

  it('a pure tilt of 0.2 mm over 2,000 leaves 0.1 without tilting and 0 with', () => {
    const tilted = map([-1000, 0], [-300, 0.07], [1000, 0.2]);
    expect(seatFit(FRAMES, tilted, whole, NOTHING)!.left).toBeCloseTo(0.1, 9);
    const fit = seatFit(FRAMES, tilted, whole, TILT)!;
    expect(fit.left).toBeCloseTo(0, 9);
    expect(fit.tilt).toBeCloseTo(0.1, 9);
  });

  it('a step leaves half its height, whatever is tilted or crowned', () => {
    // at either side of the step nothing continuous can be in both places: 0.12 / 2
    const step = map([-1000, 0], [-0.001, 0], [0.001, 0.12], [1000, 0.12]);
    for (const follow of [NOTHING, TILT, BOTH]) expect(seatFit(FRAMES, step, whole, follow)!.left).toBeCloseTo(0.06, 5);
  });

  it('the crowning\'s own parabola, 0.08 in the middle, leaves nothing; without crowning half of it', () => {
    const places = Array.from({ length: 201 }, (_, i): [number, number] => [-1000 + 10 * i, 0.08 * (1 - ((-1000 + 10 * i) / 1000) ** 2)]);
    const fit = seatFit(FRAMES, map(...places), whole, BOTH)!;
    expect(fit.crowning).toBeCloseTo(0.08, 4);
    // chords of 10 mm leave the parabola by 0.08 (5 / 1000)^2
    expect(fit.left).toBeLessThan(3e-6);
    expect(seatFit(FRAMES, map(...places), whole, TILT)!.left).toBeCloseTo(0.04, 6);
  });

  it('crowning only lifts: a bed that stands proud in the middle keeps half its height', () => {
    const proud = map([-1000, 0], [0, -0.08], [1000, 0]);
    expect(seatFit(FRAMES, proud, whole, BOTH)!).toMatchObject({ crowning: 0, left: 0.04 });
  });

  it('a tent of 0.1 leaves 0.05 to any tilt, and half of it on one flank', () => {
    const tent = map([-1000, 0], [0, 0.1], [1000, 0]);
    expect(seatFit(FRAMES, tent, whole, TILT)!.left).toBeCloseTo(0.05, 9);
    // one flank is straight: from 0.1 to 0.05 over 500 mm
    expect(seatFit(FRAMES, tent, [0, 500], NOTHING)!.left).toBeCloseTo(0.025, 9);
    expect(seatFit(FRAMES, tent, [0, 500], TILT)!.left).toBeCloseTo(0, 9);
  });

  it('past the last reading it holds for half a spacing and is not known from there on', () => {
    const short = map([-500, 0], [0, 0], [500, 0.1]);
    expect(seatFit(FRAMES, short, [500, 750], NOTHING)!.left).toBe(0);
    expect(seatFit(FRAMES, short, [500, 751], NOTHING)).toBeNull();
  });

  it.each([11, 12, 13])('the slope is that of a fine search, seed %d', (seed) => {
    const next = random(seed);
    for (let k = 0; k < 50; k++) {
      const points = Array.from({ length: 3 + Math.floor(next() * 12) }, (_, i): LinePoint => [i + 0.9 * next(), next()]);
      const found = halfRange(points, leastSlope(points));
      const searched = Math.min(...Array.from({ length: 4001 }, (_, i) => halfRange(points, -2 + i / 1000)));
      expect(found).toBeLessThanOrEqual(searched + 1e-12);
      // a slope off by 0.0005 moves the ends of 15 mm by 0.004 to both sides
      expect(found).toBeGreaterThan(searched - 0.004);
    }
  });
});

describe('where along the bed', () => {
  const base = demoFloor()[0]!;
  // flat to the left, a hollow of 0.2 at the right
  const hollow: Machine = { ...base, length: 2000, betweenFrames: 2000, crowning: 'none', seats: map([-1000, 0], [100, 0], [300, 0.2], [500, 0], [1000, 0]) };

  it('the best place for 600 mm is the nearest to the middle that the hollow does not reach', () => {
    // its right end at 100, or short of it by what is not worth moving for: 0.004 of height is 4 mm along the hollow's flank
    const place = bestPlace(hollow, 600)!;
    expect(place.window[1]).toBeGreaterThan(90);
    expect(place.window[1]).toBeLessThanOrEqual(104);
    expect(place.fit.left).toBeLessThanOrEqual(0.002);
  });

  it('1,400 mm cannot avoid it: half of 0.2 stays', () => {
    expect(bestPlace(hollow, 1400)!.fit.left).toBeCloseTo(0.1, 9);
  });

  it('what is set by hand is set once for all stations, what is powered for each step', () => {
    // a roof: up to the left of 0, down to the right; either flank alone is a tilt
    const roof = map([-1000, 0], [0, 0.1], [1000, 0]);
    const flanks = [[-900, -100], [100, 900]] as const;
    const left = (tilt: 'each step' | 'one setting' | 'none'): readonly (number | null)[] =>
      seatsLeft({ ...hollow, seats: { ...roof, tilt } }, flanks)!;
    expect(left('each step')[0]).toBeCloseTo(0, 9);
    // one setting for both is level: each flank of 800 mm keeps 0.08 / 2
    expect(left('one setting')[0]).toBeCloseTo(0.04, 9);
    expect(left('one setting')[1]).toBeCloseTo(0.04, 9);
    expect(left('none')[1]).toBeCloseTo(0.04, 9);
  });
});

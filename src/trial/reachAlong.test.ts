import { describe, expect, it } from 'vitest';
import type { Convex } from '../geometry/index.js';
import { reachAlong, reachHeld, reachesFor, shortStretches } from './reachAlong.js';

// Lengths by hand: a bend 100 long, its flange in pieces (along, away from the line). A V of 16 asks 8 mm of it here.
const V = 16;
const LEAST = 8;
const block = (from: number, to: number, near: number, far: number): Convex => [[from, near], [to, near], [to, far], [from, far]];
const held = (...flats: readonly Convex[]): number => reachHeld(reachAlong(flats, [0, 100]), V);

describe('how far the flat beside a bend reaches', () => {
  it('a plain flange reaches its own length, in one piece or two that meet', () => {
    expect(held(block(0, 100, 0, 20))).toBeCloseTo(20, 4);
    expect(held(block(0, 100, 0, 5), block(0, 100, 5, 20))).toBeCloseTo(20, 4);
  });

  it('what lies behind a wide gap does not count; a slit of a mm parts nothing', () => {
    expect(held(block(0, 100, 0, 5), block(0, 100, 7, 20))).toBeCloseTo(5, 4);
    expect(held(block(0, 100, 0, 5), block(0, 100, 5.9, 20))).toBeCloseTo(20, 4);
  });

  it('of a flange half long and half short the short half', () => {
    expect(held(block(0, 50, 0, 40), block(50, 100, 0, 3))).toBeCloseTo(3, 4);
  });

  it('a taper is short as long as it takes to reach that far', () => {
    // from 0 to 40 over 100: one V in from its low end it reaches 16 x 0.4 = 6.4
    const taper: Convex = [[0, 0], [100, 0], [100, 40]];
    expect(held(taper)).toBeCloseTo(6.4, 3);
    const [only] = shortStretches(reachAlong([taper], [0, 100]), LEAST);
    expect(only![0]).toBeCloseTo(0, 4);
    expect(only![1]).toBeCloseTo(20, 4);
  });

  it('mitred ends, a corner relief and a notch no wider than the V stay out of it; a wider notch does not', () => {
    const mitred: Convex = [[0, 0], [100, 0], [70, 30], [30, 30]];
    expect(reachesFor(reachAlong([mitred], [0, 100]), LEAST, V)).toBe(true);
    const notched = (wide: number): boolean => reachesFor(reachAlong([block(0, 100, 0, 2), block(0, 40, 2, 30), block(40 + wide, 100, 2, 30)], [0, 100]), LEAST, V);
    expect(notched(16)).toBe(true);
    expect(notched(17)).toBe(false);
  });

  it('short stretches of no more than the V may take half of the line, not more', () => {
    const comb = (wide: number): boolean => reachesFor(reachAlong([block(0, 100, 0, 2), ...[0, 1, 2, 3].map((k) => block(25 * k + wide, 25 * (k + 1), 2, 30))], [0, 100]), LEAST, V);
    expect(comb(12)).toBe(true);
    expect(comb(13)).toBe(false);
  });

  it('no metal beside the bend reaches nowhere', () => {
    expect(held()).toBe(0);
  });
});
